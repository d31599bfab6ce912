using System.Diagnostics;
using System.Globalization;
using GddWatch.Agronomy.Journal;
using GddWatch.Agronomy.Quantities;

namespace GddWatch.Storage;

/// <summary>The words for the kinds of journal entry, and what makes two entries be about the same thing.</summary>
public static class JournalKinds
{
    /// <summary>All words, in the order in which people are told of them.</summary>
    public static readonly IReadOnlyList<string> All = ["done", "reading", "sighting", "mowing"];

    /// <summary>The word for an entry's kind.</summary>
    public static string Word(JournalEntry entry) => entry switch
    {
        TreatmentDone => "done",
        SoilReading => "reading",
        Sighting => "sighting",
        Mowing => "mowing",
        _ => throw new UnreachableException(),
    };

    /// <summary>
    /// An entry as it comes back once it is kept: depths to a thousandth of a millimetre, so that inches and their centimetres are one; temperatures to 12 decimals,
    /// which any text can hold; times to the minute.
    /// </summary>
    public static JournalEntry AsKept(JournalEntry entry) => entry is SoilReading reading
        ? reading with
        {
            Depth = Depth.FromCentimetres(Math.Round(reading.Depth.Centimetres, 4)),
            Value = Temperature.FromCelsius(Math.Round(reading.Value.Celsius, 12)),
            At = reading.At is { } at ? new TimeOnly(at.Hour, at.Minute) : null,
        }
        : entry;

    /// <summary>What an entry as it is kept is about: two entries with the same identity are one thing, told in the same or in other words.</summary>
    public static string Identity(JournalEntry entry)
    {
        ArgumentNullException.ThrowIfNull(entry);
        string about = entry switch
        {
            TreatmentDone done => done.Treatment,
            SoilReading reading => string.Create(CultureInfo.InvariantCulture, $"{reading.At:HH:mm} {reading.Depth.Centimetres:R}"),
            Sighting sighting => sighting.What,
            _ => "",
        };
        return string.Create(CultureInfo.InvariantCulture, $"{entry.SiteId}\n{Word(entry)}\n{entry.On:yyyy-MM-dd}\n{about}");
    }
}
