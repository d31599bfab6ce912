namespace GddWatch.Configuration.Settings;

/// <summary>
/// The section Mail as it was written, in text, so that what is wrong can be said in its own words. <see cref="SettingsReader"/> checks it and makes the
/// server's options of it.
/// </summary>
public sealed class MailSettings
{
    /// <summary>The name of the section.</summary>
    public const string Section = "Mail";

    /// <summary>The server's name; empty writes mails into a folder instead.</summary>
    public string Host { get; set => field = value ?? ""; } = "";

    /// <summary>The port; by default the usual one for the kind of security.</summary>
    public string Port { get; set => field = value ?? ""; } = "";

    /// <summary>starttls, tls or none.</summary>
    public string Security { get; set => field = value ?? ""; } = "starttls";

    /// <summary>The user for the login; empty logs in as nobody.</summary>
    public string User { get; set => field = value ?? ""; } = "";

    /// <summary>The password, from the environment only (Mail__Password).</summary>
    public string Password { get; set => field = value ?? ""; } = "";

    /// <summary>A file that holds the password and nothing else.</summary>
    public string PasswordFile { get; set => field = value ?? ""; } = "";

    /// <summary>The address that mails come from.</summary>
    public string From { get; set => field = value ?? ""; } = "";

    /// <summary>How long to wait for the server, as hours:minutes:seconds.</summary>
    public string Timeout { get; set => field = value ?? ""; } = "00:00:30";

    /// <summary>For a private server whose certificate no public authority has signed: the SHA-256 of that certificate in hexadecimal.</summary>
    public string PinnedCertificateSha256 { get; set => field = value ?? ""; } = "";

    /// <summary>For a private server: a file with the certificates of the authorities that may vouch for it beside the public ones, as PEM.</summary>
    public string AuthorityFile { get; set => field = value ?? ""; } = "";

    /// <summary>How many mails within any minute at most; 0 for no limit.</summary>
    public string MostPerMinute { get; set => field = value ?? ""; } = "300";

    /// <summary>After how many days of trying a mail is given up.</summary>
    public string GiveUpAfterDays { get; set => field = value ?? ""; } = "3";
}
