using System.Globalization;
using GddWatch.Agronomy.Journal;
using GddWatch.Agronomy.Quantities;

namespace GddWatch.Storage;

/// <summary>A row of <c>journal_entry</c>.</summary>
internal sealed class JournalRow
{
    private const string TimeFormat = "HH':'mm";

    public long Number { get; init; }

    public string Site { get; init; } = "";

    public string Kind { get; init; } = "";

    public string OnDay { get; init; } = "";

    public string? AtTime { get; init; }

    public string? Treatment { get; init; }

    public string? Active { get; init; }

    public string? NoSeedUntil { get; init; }

    public string? What { get; init; }

    public double? DepthCm { get; init; }

    public double? ValueC { get; init; }

    public string Note { get; init; } = "";

    public string RecordedAt { get; init; } = "";

    public long? ReplacedBy { get; init; }

    public string? WithdrawnAt { get; init; }

    public string? WithdrawnBecause { get; init; }

    public static JournalRow Of(JournalEntry entry, DateTimeOffset at)
    {
        var done = entry as TreatmentDone;
        var reading = entry as SoilReading;
        return new JournalRow
        {
            Site = entry.SiteId,
            Kind = JournalKinds.Word(entry),
            OnDay = StoredText.Of(entry.On),
            AtTime = reading?.At?.ToString(TimeFormat, CultureInfo.InvariantCulture),
            Treatment = done?.Treatment,
            Active = done?.Active,
            NoSeedUntil = StoredText.Of(done?.NoSeedUntil),
            What = (entry as Sighting)?.What,
            DepthCm = reading?.Depth.Centimetres,
            ValueC = reading?.Value.Celsius,
            Note = entry.Note,
            RecordedAt = StoredText.Of(at),
        };
    }

    public KeptEntry Kept() => new(
        Number, JournalKinds.AsKept(Entry()), StoredText.Instant(RecordedAt), ReplacedBy, WithdrawnAt is null ? null : StoredText.Instant(WithdrawnAt), WithdrawnBecause ?? "");

    private JournalEntry Entry()
    {
        DateOnly on = StoredText.Day(OnDay);
        return Kind switch
        {
            "done" => new TreatmentDone { SiteId = Site, On = on, Note = Note, Treatment = Treatment!, Active = Active ?? "", NoSeedUntil = StoredText.DayOrNone(NoSeedUntil) },
            "reading" => new SoilReading { SiteId = Site, On = on, Note = Note, At = Time(), Depth = Depth.FromCentimetres(DepthCm!.Value), Value = Temperature.FromCelsius(ValueC!.Value) },
            "sighting" => new Sighting { SiteId = Site, On = on, Note = Note, What = What! },
            "mowing" => new Mowing { SiteId = Site, On = on, Note = Note },
            _ => throw new FormatException($"'{Kind}' where a kind of journal entry belongs"),
        };
    }

    private TimeOnly? Time() => AtTime is null
        ? null
        : TimeOnly.TryParseExact(AtTime, TimeFormat, CultureInfo.InvariantCulture, DateTimeStyles.None, out TimeOnly time)
            ? time
            : throw new FormatException($"'{AtTime}' where a time of day such as 08:00 belongs");
}
