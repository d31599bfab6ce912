using GddWatch.Agronomy.Places;
using GddWatch.Feeds.Csv;
using GddWatch.Feeds.Faults;
using GddWatch.Feeds.Reading;

namespace GddWatch.Feeds.Archives.Ghcn;

/// <summary>Puts the files of one station together.</summary>
internal sealed class GhcnSeries(ArchiveFeedDefinition definition, Site site, DateOnly today, FaultList faults)
{
    private readonly ReadDays days = new(faults);
    private bool knowsTimes;

    /// <summary>Where the station stands.</summary>
    public PositionTrack Positions { get; } = new();

    /// <summary>Adds what one file knows.</summary>
    public void Add(GhcnStationDays station)
    {
        List<ReadDay> rows = station.ToRows(today, definition.ObservedAt, faults);
        if (rows.TrueForAll(row => row.IsBlank)) faults.Add(FaultKind.Files, FileFaults.NoGoodDays(station.File));
        knowsTimes |= station.KnowsTimes;
        days.AddFile(rows);
    }

    /// <summary>The series, with what the files together show.</summary>
    public FeedReading Finish(string? station)
    {
        Positions.Compare(site, faults);
        if (days.IsEmpty && !faults.HasRefusal) faults.Add(FaultKind.Files, FileFaults.NoGoodDays(definition.Files));
        // "USC": United States, co-operative network (readme.txt of GHCN-Daily, section IV, SEEN).
        bool isCooperative = station?.StartsWith("USC", StringComparison.Ordinal) ?? false;
        if (isCooperative && !knowsTimes && definition.ObservedAt is null && !days.IsEmpty) faults.Add(FaultKind.Station, GhcnFaults.HourUnknown(definition.Files));
        return days.IsEmpty
            ? new FeedReading(null, faults.Told(refusalsAreLeftOut: false))
            : new FeedReading(days.ToSeries(maximumIsOfTheDayBefore: false), faults.Told(refusalsAreLeftOut: true));
    }
}
