namespace GddWatch.Configuration.Settings;

/// <summary>The section Storage as it was written, in text. <see cref="StorageReader"/> checks it.</summary>
public sealed class StorageSettings
{
    /// <summary>The name of the section.</summary>
    public const string Section = "Storage";

    /// <summary>sqlite, a file in the data folder; or postgresql, a server.</summary>
    public string Kind { get; set => field = value ?? ""; } = "sqlite";

    /// <summary>For postgresql, the connection string without its password, such as Host=db.example.org;Database=gddwatch;Username=gddwatch.</summary>
    public string Connection { get; set => field = value ?? ""; } = "";

    /// <summary>The password, from the environment only (Storage__Password).</summary>
    public string Password { get; set => field = value ?? ""; } = "";

    /// <summary>A file that holds the password and nothing else.</summary>
    public string PasswordFile { get; set => field = value ?? ""; } = "";
}
