using System.Net;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;

namespace GddWatch.Notices.Channels;

/// <summary>The mail server, and how to speak to it.</summary>
public sealed class SmtpOptions
{
    /// <summary>The longest time that a step may be given.</summary>
    public static readonly TimeSpan LongestTimeout = TimeSpan.FromMinutes(10);

    /// <summary>The server's name or address.</summary>
    /// <value>There is no default: it must be given.</value>
    public string Host { get; set; } = "";

    /// <summary>The server's port.</summary>
    /// <value>587 by default, the port for handing in mail.</value>
    public int Port { get; set; } = 587;

    /// <summary>How the line is kept private.</summary>
    /// <value>STARTTLS by default.</value>
    public SmtpSecurity Security { get; set; } = SmtpSecurity.StartTls;

    /// <summary>The name to log in with; empty for a server that wants no login.</summary>
    public string User { get; set; } = "";

    /// <summary>The password; belongs into the environment or a secrets file, and is never shown.</summary>
    public string Password { get; set; } = "";

    /// <summary>The address that the server is told as the sender; returned mail goes there.</summary>
    /// <value>There is no default: it must be given.</value>
    public string From { get; set; } = "";

    /// <summary>How long one attempt to connect, or one mail, may take.</summary>
    /// <value>One minute by default.</value>
    public TimeSpan Timeout { get; set; } = TimeSpan.FromMinutes(1);

    /// <summary>
    /// For a private server whose certificate no public authority has signed: the SHA-256 of that certificate in hexadecimal, colons allowed. Then this certificate
    /// alone is accepted.
    /// </summary>
    /// <value>Empty by default: the certificate is checked as usual.</value>
    public string PinnedCertificateSha256 { get; set; } = "";

    /// <summary>For a private server: a file with the certificates, as PEM, of the authorities that may vouch for it beside the public ones.</summary>
    /// <value>Empty by default: public authorities alone.</value>
    public string AuthorityFile { get; set; } = "";

    /// <summary>How many mails are sent within any minute at most, so that the server does not take them for a flood; 0 for no limit.</summary>
    /// <value>300 by default.</value>
    public int MostPerMinute { get; set; } = 300;

    /// <summary>Everything that is wrong, a sentence each; empty where all is well.</summary>
    public IReadOnlyList<string> Validate()
    {
        List<string> wrong = [];
        if (string.IsNullOrWhiteSpace(Host)) wrong.Add("The mail server's name is missing; give one such as \"mail.example.org\".");
        if (Port is < 1 or > 65535) wrong.Add($"The mail server's port must be from 1 to 65535; found {Port}.");
        if (!Enum.IsDefined(Security)) wrong.Add("The mail server's security must be StartTls, ImplicitTls or None.");
        if (Security == SmtpSecurity.None && !IsLoopback(Host))
        {
            wrong.Add(
                $"Without TLS, mails and passwords would travel readable to \"{Host}\": security None is accepted only for a server on this machine. " +
                "Take StartTls or ImplicitTls.");
        }
        if (!OneAddress.TryRead(From, out _))
        {
            wrong.Add($"The sender told to the mail server must be one mail address such as \"windows@example.org\"; found \"{From}\".");
        }
        if (User.Length == 0 && Password.Length > 0) wrong.Add("There is a password for the mail server but no user name to log in with.");
        if (User.Length > 0 && Password.Length == 0)
        {
            wrong.Add($"There is no password for the mail server's user \"{User}\"; give it in the environment or a secrets file.");
        }
        if (Timeout <= TimeSpan.Zero || Timeout > LongestTimeout)
        {
            wrong.Add($"The timeout must be more than 0 s and at most {LongestTimeout.TotalMinutes} min; found {Timeout}.");
        }
        if (PinnedCertificateSha256.Length > 0 && PinnedHash() is null)
        {
            wrong.Add("The pinned certificate must be its SHA-256 in hexadecimal: 64 digits, colons allowed.");
        }
        if (PinnedCertificateSha256.Length > 0 && AuthorityFile.Length > 0) wrong.Add("A pinned certificate needs no authority: give one of the two.");
        if (AuthorityFile.Length > 0 && !HasAuthorities()) wrong.Add($"The file of authorities \"{AuthorityFile}\" must hold at least one certificate as PEM.");
        if (MostPerMinute < 0) wrong.Add($"The most mails a minute must be a whole number, or 0 for no limit; found {MostPerMinute}.");
        return wrong;
    }

    /// <summary>The server and how it is spoken to, without the password.</summary>
    public override string ToString() => $"{Host}:{Port}, {Security}{(User.Length > 0 ? $", login as {User}" : "")}";

    /// <summary>The pinned hash; null where there is none or it is not one.</summary>
    internal byte[]? PinnedHash()
    {
        string digits = PinnedCertificateSha256.Replace(":", "", StringComparison.Ordinal).Trim();
        return digits.Length == 64 && digits.All(char.IsAsciiHexDigit) ? Convert.FromHexString(digits) : null;
    }

    /// <summary>Whether a certificate can be read from the file of authorities.</summary>
    public bool HasAuthorities()
    {
        try
        {
            var certificates = new X509Certificate2Collection();
            certificates.ImportFromPemFile(AuthorityFile);
            return certificates.Count > 0;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or CryptographicException or ArgumentException)
        {
            return false;
        }
    }

    private static bool IsLoopback(string host) =>
        string.Equals(host, "localhost", StringComparison.OrdinalIgnoreCase) || (IPAddress.TryParse(host, out IPAddress? address) && IPAddress.IsLoopback(address));
}
