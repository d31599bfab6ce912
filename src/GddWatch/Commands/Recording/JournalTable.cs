using System.Globalization;
using GddWatch.Agronomy.Journal;
using GddWatch.Storage;

namespace GddWatch.Commands.Recording;

/// <summary>The journal as rows of a table: what is exported can be imported again.</summary>
internal static class JournalTable
{
    /// <summary>The columns that an import reads.</summary>
    public static readonly IReadOnlyList<string> Columns = ["kind", "site", "on", "at", "treatment", "active", "no-seed-until", "what", "depth", "value", "note"];

    /// <summary>Those and what only this program knows of an entry.</summary>
    public static readonly IReadOnlyList<string> ColumnsWithHistory = [.. Columns, "number", "recorded-at", "replaced-by", "withdrawn-at", "withdrawn-because"];

    /// <summary>The cells that an import reads, metric.</summary>
    public static IReadOnlyList<string?> Cells(JournalEntry entry)
    {
        var done = entry as TreatmentDone;
        var reading = entry as SoilReading;
        string day = Day(entry.On);
        return
        [
            JournalKinds.Word(entry),
            entry.SiteId,
            reading is null ? day : null,
            reading is null ? null : reading.At is { } time ? $"{day} {Time(time)}" : day,
            done?.Treatment,
            Text(done?.Active),
            done?.NoSeedUntil is { } label ? Day(label) : null,
            (entry as Sighting)?.What,
            reading is null ? null : $"{Exactly(reading.Depth.Centimetres)} cm",
            reading is null ? null : $"{Exactly(reading.Value.Celsius)} °C",
            Text(entry.Note),
        ];
    }

    /// <summary>All cells.</summary>
    public static IReadOnlyList<string?> CellsWithHistory(KeptEntry kept) =>
    [
        .. Cells(kept.Entry),
        kept.Number.ToString(CultureInfo.InvariantCulture),
        Instant(kept.RecordedAt),
        kept.ReplacedBy?.ToString(CultureInfo.InvariantCulture),
        kept.WithdrawnAt is { } at ? Instant(at) : null,
        Text(kept.WithdrawnBecause),
    ];

    /// <summary>An entry as JSON has it; unlike a cell, a number is a number.</summary>
    public static object ForPrograms(KeptEntry kept)
    {
        var done = kept.Entry as TreatmentDone;
        var reading = kept.Entry as SoilReading;
        return new
        {
            kept.Number,
            Kind = JournalKinds.Word(kept.Entry),
            Site = kept.Entry.SiteId,
            On = Day(kept.Entry.On),
            At = reading?.At is { } time ? Time(time) : null,
            done?.Treatment,
            Active = Text(done?.Active),
            NoSeedUntil = done?.NoSeedUntil is { } label ? Day(label) : null,
            (kept.Entry as Sighting)?.What,
            DepthCm = reading?.Depth.Centimetres,
            ValueC = reading?.Value.Celsius,
            Note = Text(kept.Entry.Note),
            RecordedAt = Instant(kept.RecordedAt),
            InForce = kept.IsInForce,
            kept.ReplacedBy,
            WithdrawnAt = kept.WithdrawnAt is { } at ? Instant(at) : null,
            WithdrawnBecause = Text(kept.WithdrawnBecause),
        };
    }

    private static string? Text(string? text) => string.IsNullOrEmpty(text) ? null : text;

    private static string Day(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    private static string Time(TimeOnly time) => time.ToString("HH:mm", CultureInfo.InvariantCulture);

    /// <summary>The shortest text that reads back as the same number; an exponent, which no quantity may have, is written out to the 12 decimals that are kept.</summary>
    private static string Exactly(double number)
    {
        string shortest = number.ToString("R", CultureInfo.InvariantCulture);
        return shortest.Contains('E', StringComparison.Ordinal) ? number.ToString("F12", CultureInfo.InvariantCulture).TrimEnd('0').TrimEnd('.') : shortest;
    }

    private static string Instant(DateTimeOffset at) => at.UtcDateTime.ToString("yyyy-MM-dd'T'HH:mm:ss'Z'", CultureInfo.InvariantCulture);
}
