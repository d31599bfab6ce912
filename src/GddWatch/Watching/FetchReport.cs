using GddWatch.Feeds;
using GddWatch.Feeds.Faults;
using GddWatch.Feeds.Services;

namespace GddWatch.Watching;

/// <summary>What asking the services brought to light.</summary>
/// <param name="Readings">What each answered, by site and feed.</param>
/// <param name="Remarks">What the operator should look at, by site and feed.</param>
/// <param name="Changed">How many values the services have changed since they were first seen.</param>
internal sealed record FetchReport(
    ILookup<(string Site, string Feed), ServiceReading> Readings, ILookup<(string Site, string Feed), FeedRemark> Remarks, int Changed)
{
    /// <summary>Nothing was asked.</summary>
    public static FetchReport Nothing { get; } = new(
        Array.Empty<ServiceReading>().ToLookup(_ => ("", "")), Array.Empty<FeedRemark>().ToLookup(_ => ("", "")), 0);

    /// <summary>The faults of the last answer of a feed for a site.</summary>
    public IReadOnlyList<Fault> FaultsOf(string site, string feed) => [.. Readings[(site, feed)].SelectMany(reading => reading.Faults)];
}
