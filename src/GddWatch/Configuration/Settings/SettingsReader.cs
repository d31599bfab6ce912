using System.Globalization;
using System.Net;
using System.Text.Json;
using GddWatch.Configuration.Reading;
using GddWatch.Configuration.Yaml;
using GddWatch.Notices.Channels;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.Configuration.Json;

namespace GddWatch.Configuration.Settings;

/// <summary>
/// Reads the sections Mail and Schedule of the platform's configuration (appsettings.json, then the environment, where Mail__Host is Mail:Host), and finds
/// all faults in one go. A secret that is found where it does not belong is named by its key, never shown.
/// </summary>
public sealed class SettingsReader
{
    private static readonly string[] MailKeys = ["Host", "Port", "Security", "User", "Password", "PasswordFile", "From", "Timeout", "PinnedCertificateSha256"];
    private static readonly string[] ScheduleKeys = ["At", "BulletinOn", "BulletinAt", "BulletinTimeZone"];

    private readonly List<string> faults = [];
    private readonly string baseFolder;

    private SettingsReader(string baseFolder) => this.baseFolder = baseFolder;

    /// <summary>The file of the settings, inside the configuration folder.</summary>
    public const string File = "appsettings.json";

    /// <summary>Reads the settings of a configuration folder, which may be absent, and of the environment, which overrides them.</summary>
    public static SettingsReading Read(string configFolder)
    {
        string path = Path.GetFullPath(Path.Combine(configFolder, File));
        try
        {
            IConfiguration configuration = new ConfigurationBuilder().AddJsonFile(path, optional: true).AddEnvironmentVariables().Build();
            return Read(configuration, new ConfigurationPaths(configFolder).BaseFolder);
        }
        catch (Exception exception) when (exception is InvalidDataException or IOException or UnauthorizedAccessException)
        {
            string where = exception.GetBaseException() is JsonException { LineNumber: { } line } ? $", line {line + 1}" : "";
            return new SettingsReading(null, [$"{Path.Combine(configFolder, File)}{where}: the file cannot be read as JSON. Accepted: keys and values in quotation marks, with a comma between entries and none after the last."]);
        }
    }

    /// <summary>Reads settings.</summary>
    /// <param name="configuration">The platform's configuration.</param>
    /// <param name="baseFolder">The folder where a relative path of a secrets file starts.</param>
    public static SettingsReading Read(IConfiguration configuration, string baseFolder)
    {
        var reader = new SettingsReader(baseFolder);
        reader.CheckKeys(configuration.GetSection(MailSettings.Section), MailKeys);
        reader.CheckKeys(configuration.GetSection(ScheduleSettings.Section), ScheduleKeys);
        reader.CheckSecretsInFiles(configuration);
        MailSettings mail = configuration.GetSection(MailSettings.Section).Get<MailSettings>() ?? new MailSettings();
        ScheduleSettings schedule = configuration.GetSection(ScheduleSettings.Section).Get<ScheduleSettings>() ?? new ScheduleSettings();
        SmtpOptions? server = reader.ReadMail(mail);
        TimeOnly at = reader.ReadSchedule(schedule);
        BulletinTime? bulletin = reader.ReadBulletin(schedule);
        return reader.faults.Count == 0
            ? new SettingsReading(new ServiceSettings { MailServer = server, DailyAt = at, Bulletin = bulletin }, [])
            : new SettingsReading(null, reader.faults);
    }

    private SmtpOptions? ReadMail(MailSettings mail)
    {
        if (mail.Host.Length == 0)
        {
            if (mail.User.Length > 0) Add("Mail:User", mail.User, "there is no Mail:Host to log in to", "the name of the server in Mail:Host, or no user");
            return null;
        }

        SmtpSecurity security = ReadSecurity(mail.Security);
        string host = mail.Host.Trim();
        if (Uri.CheckHostName(host) == UriHostNameType.Unknown) Add("Mail:Host", host.Contains('@') ? null : host, "this is not the name of a server", "a name such as mail.example.org, without a port, a scheme or a login");
        if (!MailAddress.IsPlausible(mail.From)) Add("Mail:From", mail.From, "this is not a mail address", MailAddress.Accepted);
        string? password = ReadPassword(mail);
        if (mail.User.Length > 0 && password is null) Add("Mail:Password", null, "there is a user but no password", "the environment variable Mail__Password, or Mail:PasswordFile with the path of a file that holds it");
        if (mail.User.Length == 0 && password is not null) Add("Mail:User", null, "there is a password but no user", "the user that the password belongs to");
        if (security == SmtpSecurity.None && !IsThisMachine(host)) Add("Mail:Security", mail.Security, "mails and passwords would cross the net in the clear", "starttls or tls; none only where Mail:Host is this machine");
        return new SmtpOptions
        {
            Host = host,
            Port = ReadPort(mail.Port, security),
            Security = security,
            User = mail.User,
            Password = password ?? "",
            From = mail.From,
            Timeout = ReadTimeout(mail.Timeout),
            PinnedCertificateSha256 = ReadPin(mail.PinnedCertificateSha256),
        };
    }

    private SmtpSecurity ReadSecurity(string text)
    {
        switch (text.ToUpperInvariant())
        {
            case "STARTTLS": return SmtpSecurity.StartTls;
            case "TLS": return SmtpSecurity.ImplicitTls;
            case "NONE": return SmtpSecurity.None;
            default:
                Add("Mail:Security", text, "this word is not known", "starttls, tls or none");
                return SmtpSecurity.StartTls;
        }
    }

    private int ReadPort(string text, SmtpSecurity security)
    {
        // 587 is the port of submission (RFC 6409), 465 that of submission over TLS (RFC 8314), 25 that of relay (RFC 5321).
        if (text.Length == 0) return security switch { SmtpSecurity.ImplicitTls => 465, SmtpSecurity.None => 25, _ => 587 };
        if (int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out int port) && port is >= 1 and <= 65535) return port;
        Add("Mail:Port", text, "this is not a port", "a whole number from 1 to 65535, such as 587; nothing takes the usual one");
        return 0;
    }

    private TimeSpan ReadTimeout(string text)
    {
        bool read = TimeSpan.TryParseExact(text, @"hh\:mm\:ss", CultureInfo.InvariantCulture, out TimeSpan timeout);
        if (!read || timeout < TimeSpan.FromSeconds(1) || timeout > TimeSpan.FromMinutes(10))
        {
            Add("Mail:Timeout", text, "this is not a time to wait for a server", "hours:minutes:seconds from 00:00:01 to 00:10:00, such as 00:00:30");
        }

        return timeout;
    }

    private string ReadPin(string text)
    {
        string digits = text.Replace(":", "");
        if (digits.Length > 0 && (digits.Length != 64 || !digits.All(char.IsAsciiHexDigit)))
        {
            Add("Mail:PinnedCertificateSha256", text, "this is not the SHA-256 of a certificate", "64 hexadecimal digits, colons between them allowed");
        }

        return text;
    }

    private TimeOnly ReadSchedule(ScheduleSettings schedule)
    {
        if (TimeOnly.TryParseExact(schedule.At, "HH:mm", CultureInfo.InvariantCulture, DateTimeStyles.None, out TimeOnly at)) return at;
        Add("Schedule:At", schedule.At, "this is not a time of the day", "hours:minutes with two digits each, such as 06:00");
        return default;
    }

    private BulletinTime? ReadBulletin(ScheduleSettings schedule)
    {
        if (schedule.BulletinOn.Length == 0) return null;
        bool isDay = Enum.TryParse(schedule.BulletinOn, ignoreCase: true, out DayOfWeek on) && !schedule.BulletinOn.Any(char.IsAsciiDigit);
        if (!isDay) Add("Schedule:BulletinOn", schedule.BulletinOn, "this is not a day of the week", $"one of {string.Join(", ", Enum.GetNames<DayOfWeek>())}, or nothing for no bulletin");
        TimeOnly? at = null;
        if (schedule.BulletinAt.Length > 0)
        {
            if (TimeOnly.TryParseExact(schedule.BulletinAt, "HH:mm", CultureInfo.InvariantCulture, DateTimeStyles.None, out TimeOnly time)) at = time;
            else Add("Schedule:BulletinAt", schedule.BulletinAt, "this is not a time of the day", "hours:minutes with two digits each, such as 07:30; nothing sends it as soon as it is written");
        }

        if (schedule.BulletinTimeZone.Length > 0 && !TimeZoneInfo.TryFindSystemTimeZoneById(schedule.BulletinTimeZone, out _))
        {
            Add("Schedule:BulletinTimeZone", schedule.BulletinTimeZone, "this time zone is not known", "a name such as America/Chicago; nothing takes the region's");
        }

        return new BulletinTime(on, at, schedule.BulletinTimeZone.Length > 0 ? schedule.BulletinTimeZone : null);
    }

    private string? ReadPassword(MailSettings mail)
    {
        if (mail.PasswordFile.Length == 0) return mail.Password.Length > 0 ? mail.Password : null;
        if (mail.Password.Length > 0) Add("Mail:PasswordFile", mail.PasswordFile, "there is a password besides", "one of the two");
        try
        {
            string password = System.IO.File.ReadAllText(Path.GetFullPath(mail.PasswordFile, baseFolder)).TrimEnd('\r', '\n');
            if (password.Length > 0) return password;
            Add("Mail:PasswordFile", mail.PasswordFile, "the file is empty", "a file that holds the password and nothing else");
        }
        catch (Exception exception) when (exception is IOException or UnauthorizedAccessException or ArgumentException)
        {
            Add("Mail:PasswordFile", mail.PasswordFile, "the file cannot be read", "the path of a file that the service may read");
        }

        // A fault is told already; that the password is missing besides would only confuse.
        return "";
    }

    private void CheckKeys(IConfigurationSection section, string[] known)
    {
        foreach (IConfigurationSection child in section.GetChildren())
        {
            if (known.Contains(child.Key, StringComparer.OrdinalIgnoreCase)) continue;
            faults.Add($"{section.Key}:{child.Key}: this key is not known. Accepted: {NearestWord.Hint(child.Key, known)}.");
        }
    }

    private void CheckSecretsInFiles(IConfiguration configuration)
    {
        if (configuration is not IConfigurationRoot root) return;
        foreach (JsonConfigurationProvider file in root.Providers.OfType<JsonConfigurationProvider>())
        {
            if (!file.TryGet($"{MailSettings.Section}:{nameof(MailSettings.Password)}", out string? password) || string.IsNullOrEmpty(password)) continue;
            faults.Add($"Mail:Password: a password stands in {Path.GetFileName(file.Source.Path)}, where it does not belong; change it and take it out. Accepted: the environment variable Mail__Password, or Mail:PasswordFile with the path of a file that holds it.");
        }
    }

    private void Add(string key, string? found, string problem, string accepted)
    {
        string shown = found is null ? "" : $" Found: \"{string.Concat(found.Select(each => char.IsControl(each) ? '·' : each))}\".";
        faults.Add($"{key}: {problem}.{shown} Accepted: {accepted}.");
    }

    private static bool IsThisMachine(string host) =>
        host.Equals("localhost", StringComparison.OrdinalIgnoreCase) || (IPAddress.TryParse(host, out IPAddress? address) && IPAddress.IsLoopback(address));
}
