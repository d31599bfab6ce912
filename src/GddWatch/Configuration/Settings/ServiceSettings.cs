using GddWatch.Notices.Channels;

namespace GddWatch.Configuration.Settings;

/// <summary>How the service runs, checked.</summary>
public sealed record ServiceSettings
{
    /// <summary>The server to send through; null writes mails into a folder.</summary>
    public SmtpOptions? MailServer { get; init; }

    /// <summary>After how long a mail that is refused for now is given up, counted from the first attempt.</summary>
    public TimeSpan GiveUpAfter { get; init; } = TimeSpan.FromDays(3);

    /// <summary>The time of the daily pass in the region's time zone.</summary>
    public required TimeOnly DailyAt { get; init; }

    /// <summary>When the weekly bulletin goes out; null where there is none.</summary>
    public BulletinTime? Bulletin { get; init; }

    /// <summary>The port of this machine on which the service says how it is; null for none.</summary>
    public int? HealthPort { get; init; }
}
