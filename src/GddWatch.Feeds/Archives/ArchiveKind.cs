namespace GddWatch.Feeds.Archives;

/// <summary>The archive formats that can be read.</summary>
public enum ArchiveKind
{
    /// <summary>US Climate Reference Network, daily files, product CRND0103.</summary>
    UscrnDaily,

    /// <summary>GHCN-Daily, one file a station in fixed columns, ".dly".</summary>
    GhcnDailyDly,

    /// <summary>GHCN-Daily, one CSV file a station: a column an element with its attributes, or a line an element and day.</summary>
    GhcnDailyStationCsv,

    /// <summary>GHCN-Daily, one CSV file a year for all stations, a line an element and day, in any order.</summary>
    GhcnDailyByYearCsv,
}
