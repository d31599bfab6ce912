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
            reading is null ? null : reading.At is { } time ? $"{day} {time.ToString("HH:mm", CultureInfo.InvariantCulture)}" : day,
            done?.Treatment,
            Text(done?.Active),
            done?.NoSeedUntil is { } label ? Day(label) : null,
            (entry as Sighting)?.What,
            reading is null ? null : string.Create(CultureInfo.InvariantCulture, $"{reading.Depth.Centimetres:R} cm"),
            reading is null ? null : string.Create(CultureInfo.InvariantCulture, $"{reading.Value.Celsius:R} °C"),
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

    private static string? Text(string? text) => string.IsNullOrEmpty(text) ? null : text;

    private static string Day(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    private static string Instant(DateTimeOffset at) => at.UtcDateTime.ToString("yyyy-MM-dd'T'HH:mm:ss'Z'", CultureInfo.InvariantCulture);
}
