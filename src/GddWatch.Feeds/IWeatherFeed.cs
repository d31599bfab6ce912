using GddWatch.Agronomy.Places;

namespace GddWatch.Feeds;

/// <summary>Where a site's daily weather comes from. Each kind of feed is one implementation.</summary>
public interface IWeatherFeed
{
    /// <summary>The feed as people call it, such as the path of its file.</summary>
    string Name { get; }

    /// <summary>Reads all days that the feed knows of the site up to today, with the faults met on the way. Bad input is a fault, never an exception.</summary>
    Task<FeedReading> ReadAsync(Site site, DateOnly today, CancellationToken stop);
}
