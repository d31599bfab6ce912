using System.Globalization;
using System.Net;
using System.Text.Json;
using GddWatch.Configuration.Reading;
using GddWatch.Notices.Channels;
using Microsoft.Extensions.Configuration;

namespace GddWatch.Configuration.Settings;

/// <summary>
/// Reads the sections Mail, Schedule, Storage and Health of the platform's configuration (appsettings.json, then the environment, where Mail__Host is Mail:Host), and finds
/// all faults in one go. A secret that is found where it does not belong is named by its key, never shown.
/// </summary>
public sealed class SettingsReader
{
    private static readonly string[] MailKeys = ["Host", "Port", "Security", "User", "Password", "PasswordFile", "From", "Timeout", "PinnedCertificateSha256", "AuthorityFile", "MostPerMinute", "GiveUpAfterDays"];
    private static readonly string[] ScheduleKeys = ["At", "BulletinOn", "BulletinAt", "BulletinTimeZone"];
    private static readonly string[] HealthKeys = ["Port"];

    private readonly SettingsFaults faults;

    private SettingsReader(string baseFolder) => faults = new SettingsFaults(baseFolder);

    /// <summary>The file of the settings, inside the configuration folder.</summary>
    public const string File = "appsettings.json";

    /// <summary>Reads the settings of a configuration folder, which may be absent, and of the environment, which overrides them.</summary>
    public static SettingsReading Read(string configFolder) => ReadPlatform(configFolder, Read, faults => new SettingsReading(null, faults));

    /// <summary>Reads settings.</summary>
    /// <param name="configuration">The platform's configuration.</param>
    /// <param name="baseFolder">The folder where a relative path of a secrets file starts.</param>
    public static SettingsReading Read(IConfiguration configuration, string baseFolder)
    {
        var reader = new SettingsReader(baseFolder);
        reader.faults.CheckKeys(configuration.GetSection(MailSettings.Section), MailKeys);
        reader.faults.CheckKeys(configuration.GetSection(ScheduleSettings.Section), ScheduleKeys);
        reader.faults.CheckKeys(configuration.GetSection(HealthSettings.Section), HealthKeys);
        reader.faults.CheckSecretInFiles(configuration, MailSettings.Section, nameof(MailSettings.Password), _ => true);
        MailSettings mail = configuration.GetSection(MailSettings.Section).Get<MailSettings>() ?? new MailSettings();
        ScheduleSettings schedule = configuration.GetSection(ScheduleSettings.Section).Get<ScheduleSettings>() ?? new ScheduleSettings();
        SmtpOptions? server = reader.ReadMail(mail);
        TimeSpan giveUpAfter = TimeSpan.FromDays(reader.ReadNumber("Mail:GiveUpAfterDays", mail.GiveUpAfterDays, 1, 30, "a whole number of days from 1 to 30, such as 3"));
        TimeOnly at = reader.ReadSchedule(schedule);
        BulletinTime? bulletin = reader.ReadBulletin(schedule);
        int? healthPort = reader.ReadHealthPort(configuration.GetSection(HealthSettings.Section).Get<HealthSettings>() ?? new HealthSettings());
        StorageReading storage = StorageReader.Read(configuration, baseFolder);
        reader.faults.AddRange(storage.Faults);
        return reader.faults.All.Count == 0
            ? new SettingsReading(new ServiceSettings { MailServer = server, GiveUpAfter = giveUpAfter, DailyAt = at, Bulletin = bulletin, HealthPort = healthPort }, [])
            : new SettingsReading(null, reader.faults.All);
    }

    /// <summary>Reads the settings file and the environment.</summary>
    /// <param name="configFolder">The configuration folder.</param>
    /// <param name="read">What is made of them and of the folder where relative paths start.</param>
    /// <param name="refuse">What is made of faults where the file cannot be read.</param>
    internal static T ReadPlatform<T>(string configFolder, Func<IConfiguration, string, T> read, Func<IReadOnlyList<string>, T> refuse)
    {
        string path = Path.GetFullPath(Path.Combine(configFolder, File));
        try
        {
            IConfiguration configuration = new ConfigurationBuilder().AddJsonFile(path, optional: true).AddEnvironmentVariables().Build();
            return read(configuration, new ConfigurationPaths(configFolder).BaseFolder);
        }
        catch (Exception exception) when (exception is InvalidDataException or IOException or UnauthorizedAccessException)
        {
            string where = exception.GetBaseException() is JsonException { LineNumber: { } line } ? $", line {line + 1}" : "";
            return refuse([$"{Path.Combine(configFolder, File)}{where}: the file cannot be read as JSON. Accepted: keys and values in quotation marks, with a comma between entries and none after the last."]);
        }
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
        string? password = faults.ReadPassword(MailSettings.Section, mail.Password, mail.PasswordFile);
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
            AuthorityFile = ReadAuthorities(mail),
            MostPerMinute = ReadNumber("Mail:MostPerMinute", mail.MostPerMinute, 0, 100_000, "a whole number such as 300, or 0 for no limit"),
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

    private string ReadAuthorities(MailSettings mail)
    {
        if (mail.AuthorityFile.Length == 0) return "";
        if (mail.PinnedCertificateSha256.Length > 0) Add("Mail:AuthorityFile", mail.AuthorityFile, "there is a pinned certificate besides", "one of the two");
        string path = Path.GetFullPath(mail.AuthorityFile, faults.BaseFolder);
        var options = new SmtpOptions { AuthorityFile = path };
        if (!options.HasAuthorities()) Add("Mail:AuthorityFile", mail.AuthorityFile, "no certificate can be read from it", "the path of a file with one certificate or more as PEM");
        return path;
    }

    private int ReadNumber(string key, string text, int least, int most, string accepted)
    {
        if (int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out int number) && number >= least && number <= most) return number;
        Add(key, text, "this is no such number", accepted);
        return least;
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

    private int? ReadHealthPort(HealthSettings health)
    {
        if (health.Port.Length == 0) return null;
        if (int.TryParse(health.Port, NumberStyles.None, CultureInfo.InvariantCulture, out int port) && port is >= 0 and <= 65535) return port == 0 ? null : port;
        Add("Health:Port", health.Port, "this is not a port", "a whole number from 1 to 65535, such as 8080; 0 for none");
        return null;
    }

    private void Add(string key, string? found, string problem, string accepted) => faults.Add(key, found, problem, accepted);

    private static bool IsThisMachine(string host) =>
        host.Equals("localhost", StringComparison.OrdinalIgnoreCase) || (IPAddress.TryParse(host, out IPAddress? address) && IPAddress.IsLoopback(address));
}
