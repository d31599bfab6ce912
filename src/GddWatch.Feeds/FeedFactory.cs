using System.Diagnostics;
using GddWatch.Feeds.Archives;
using GddWatch.Feeds.Csv;

namespace GddWatch.Feeds;

/// <summary>The one place that knows every kind of feed: a new kind adds its line here.</summary>
public static class FeedFactory
{
    /// <summary>The feed that a definition describes.</summary>
    /// <param name="definition">The feed as configured.</param>
    /// <param name="baseFolder">The folder at which relative paths start.</param>
    /// <param name="clock">The time.</param>
    public static IWeatherFeed Create(FeedDefinition definition, string baseFolder, TimeProvider clock) => definition switch
    {
        CsvFeedDefinition csv => new CsvFeed(csv, baseFolder, clock),
        ArchiveFeedDefinition { Kind: ArchiveKind.UscrnDaily } archive => new UscrnDailyArchive(archive, baseFolder, clock),
        _ => throw new UnreachableException($"No feed reads {definition}."),
    };
}
