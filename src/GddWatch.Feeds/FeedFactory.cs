using System.Diagnostics;
using GddWatch.Feeds.Archives;
using GddWatch.Feeds.Archives.Ghcn;
using GddWatch.Feeds.Csv;

namespace GddWatch.Feeds;

/// <summary>The one place that knows every kind of feed: a new kind adds its line here.</summary>
public static class FeedFactory
{
    /// <summary>The feed that a definition describes.</summary>
    /// <param name="definition">The feed as configured.</param>
    /// <param name="baseFolder">The folder at which relative paths start.</param>
    /// <param name="clock">The time.</param>
    /// <param name="yearly">The files by year that the sites of a run share; null lets the feed read its own.</param>
    public static IWeatherFeed Create(FeedDefinition definition, string baseFolder, TimeProvider clock, YearlyFiles? yearly = null) => definition switch
    {
        CsvFeedDefinition csv => new CsvFeed(csv, baseFolder, clock),
        ArchiveFeedDefinition { Kind: ArchiveKind.UscrnDaily } archive => new UscrnDailyArchive(archive, baseFolder, clock),
        ArchiveFeedDefinition { Kind: ArchiveKind.GhcnDailyDly or ArchiveKind.GhcnDailyStationCsv } archive => new GhcnStationArchive(archive, baseFolder, clock),
        ArchiveFeedDefinition { Kind: ArchiveKind.GhcnDailyByYearCsv } archive =>
            new GhcnByYearArchive(archive, baseFolder, yearly ?? new YearlyFiles([archive], baseFolder, clock)),
        _ => throw new UnreachableException($"No feed reads {definition}."),
    };
}
