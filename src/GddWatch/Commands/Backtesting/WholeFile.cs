using System.Text;

namespace GddWatch.Commands.Backtesting;

/// <summary>Writes a file whole or not at all: beside it first, then put in its place, so that whoever stops the program finds the old one or the new one.</summary>
internal static class WholeFile
{
    public static async Task WriteAsync(string path, string text, CancellationToken stop)
    {
        string full = Path.GetFullPath(path);
        Directory.CreateDirectory(Path.GetDirectoryName(full)!);
        string beside = $"{full}.{Environment.ProcessId}.part";
        try
        {
            await File.WriteAllTextAsync(beside, text, new UTF8Encoding(false), stop);
            stop.ThrowIfCancellationRequested();
            File.Move(beside, full, overwrite: true);
        }
        finally
        {
            if (File.Exists(beside)) File.Delete(beside);
        }
    }
}
