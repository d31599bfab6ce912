namespace GddWatch.Feeds.Services.Fetching;

/// <summary>How long, how often and how much a service is asked.</summary>
public sealed record FetchLimits
{
    /// <summary>How long one attempt may take, its body included; 30 s by default.</summary>
    public TimeSpan Attempt { get; init; } = TimeSpan.FromSeconds(30);

    /// <summary>How often a failed request is repeated; 3 times by default.</summary>
    public int Retries { get; init; } = 3;

    /// <summary>The wait before the first repetition; doubled each time, with chance in it; 2 s by default.</summary>
    public TimeSpan FirstWait { get; init; } = TimeSpan.FromSeconds(2);

    /// <summary>A service that asks to be left alone for longer than this is left alone until the next pass; 2 minutes by default.</summary>
    public TimeSpan LongestWait { get; init; } = TimeSpan.FromMinutes(2);

    /// <summary>How many requests a host gets at once; 12 by default.</summary>
    public int AtOnce { get; init; } = 12;

    /// <summary>How many requests a host gets in a minute; 300 by default, half of what the strictest of the services allows (600, SEEN). This machine itself is not spared.</summary>
    public int PerMinute { get; init; } = 300;

    /// <summary>How many bytes a reply may have when unpacked; 16 MB by default, several times the largest that is asked for.</summary>
    public int ReplyBytes { get; init; } = 16 * 1024 * 1024;

    /// <summary>After this many attempts of which half failed, a host is not asked for a while; 10 by default.</summary>
    public int BreakAfter { get; init; } = 10;

    /// <summary>How long a failing host is not asked; 5 minutes by default.</summary>
    public TimeSpan Break { get; init; } = TimeSpan.FromMinutes(5);

    /// <summary>How many redirections are followed; 3 by default.</summary>
    public int Redirects { get; init; } = 3;
}
