namespace GddWatch.Tests.Notices.Composing;

/// <summary>The committed mail templates, or a copy of them that a test may spoil.</summary>
internal sealed class TemplatesFolder : IDisposable
{
    private TemplatesFolder(string path) => Path = path;

    public static string Committed { get; } = System.IO.Path.Combine(SharedFiles.RepositoryRoot, "config", "mail");

    public string Path { get; }

    public static TemplatesFolder Copy()
    {
        string path = Directory.CreateTempSubdirectory("gddwatch-templates-").FullName;
        foreach (string file in Directory.EnumerateFiles(Committed)) File.Copy(file, System.IO.Path.Combine(path, System.IO.Path.GetFileName(file)));
        return new(path);
    }

    public string PathOf(string name) => System.IO.Path.Combine(Path, name);

    public void Write(string name, string text) => File.WriteAllText(PathOf(name), text);

    public void Dispose() => Directory.Delete(Path, recursive: true);
}
