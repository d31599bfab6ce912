using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Weather;
using GddWatch.Feeds.Csv;
using GddWatch.Feeds.Faults;
using GddWatch.Feeds.Reading;

namespace GddWatch.Feeds.Archives.Ghcn;

/// <summary>Puts the files of one station together.</summary>
internal sealed class GhcnSeries(ArchiveFeedDefinition definition, Site site, DateOnly today, FaultList faults)
{
    private readonly ReadDays days = new(faults);
    private readonly List<GhcnStationDays> plain = [];
    private bool knowsTimes;

    /// <summary>Where the station stands.</summary>
    public PositionTrack Positions { get; } = new();

    /// <summary>Adds what one file knows.</summary>
    public void Add(GhcnStationDays station)
    {
        station.Tell(faults);
        knowsTimes |= station.KnowsTimes;
        // Files of different years whose days need no judging go into columns without rows between: rows cost more than the reading of all lines.
        if (days.IsEmpty && station.ArePlain(today, definition.ObservedAt) && (plain.Count == 0 || plain[^1].LastDayNumber < station.FirstDayNumber))
        {
            if (!station.KnowsValues) faults.Add(FaultKind.Files, FileFaults.NoGoodDays(station.File));
            plain.Add(station);
            return;
        }

        foreach (GhcnStationDays earlier in plain) days.AddFile(earlier.ToRows(today, definition.ObservedAt, faults));
        plain.Clear();
        List<ReadDay> rows = station.ToRows(today, definition.ObservedAt, faults);
        if (rows.TrueForAll(row => row.IsBlank)) faults.Add(FaultKind.Files, FileFaults.NoGoodDays(station.File));
        days.AddFile(rows);
    }

    /// <summary>The series, with what the files together show.</summary>
    public FeedReading Finish(string? station)
    {
        Positions.Compare(site, faults);
        bool isEmpty = days.IsEmpty && plain.Count == 0;
        if (isEmpty && !faults.HasRefusal) faults.Add(FaultKind.Files, FileFaults.NoGoodDays(definition.Files));
        // "USC": United States, co-operative network (readme.txt of GHCN-Daily, section IV, SEEN).
        bool isCooperative = station?.StartsWith("USC", StringComparison.Ordinal) ?? false;
        if (isCooperative && !knowsTimes && definition.ObservedAt is null && !isEmpty) faults.Add(FaultKind.Station, GhcnFaults.HourUnknown(definition.Files));
        if (isEmpty) return new FeedReading(null, faults.Told(refusalsAreLeftOut: false));
        DailySeries? series = plain.Count > 0 ? PlainColumns() : days.ToSeries(maximumIsOfTheDayBefore: false);
        return new FeedReading(series, faults.Told(refusalsAreLeftOut: true));
    }

    private DailySeries? PlainColumns()
    {
        DailySeriesBuilder builder = new(DateOnly.FromDayNumber(plain[0].FirstDayNumber), DateOnly.FromDayNumber(plain[^1].LastDayNumber));
        int? last = null;
        foreach (GhcnStationDays station in plain) last = station.PutInto(builder, last, faults);
        return builder.Build();
    }
}
