using System.Globalization;
using System.Text.RegularExpressions;
using GddWatch.Agronomy.Journal;
using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Treatments;
using GddWatch.Configuration.Scalars;
using GddWatch.Configuration.Yaml;
using GddWatch.Storage;

namespace GddWatch.Commands.Recording;

/// <summary>Turns what somebody wrote into an entry of the journal, and finds all that is wrong with it in one go.</summary>
internal sealed partial class EntryReader(Workplace place)
{
    private const int LongestText = 500;
    private const double ShallowestCm = 2;
    private const double DeepestCm = 20;
    private const double ColdestSoilC = -30;
    private const double WarmestSoilC = 60;
    private const string ADay = "year, month and day with hyphens, such as 2026-04-12, not later than today";
    private const string ATime = "the site's day and time of day, such as \"2026-04-12 08:00\", or the day alone for a mean of the day";
    private const string ADepth = "a number with its unit, such as \"5 cm\" or \"2 in\", from 2 cm to 20 cm (0.8 in to 7.8 in)";
    private const string AValue = "a number with °F or °C, such as \"51 °F\", from -30 °C to 60 °C (-22 °F to 140 °F)";

    // A year with two digits or a slip, such as 0206, is no day of anybody's journal.
    private static readonly DateOnly EarliestDay = new(1900, 1, 1);

    /// <summary>The entry; null where anything in it is wrong.</summary>
    public JournalEntry? Read(EntryText text, List<EntryFault> faults)
    {
        int before = faults.Count;
        Site? site = ReadSite(text.Site, faults);
        string note = ReadText("note", text.Note, faults) ?? "";
        if (text.Kind is null || !JournalKinds.All.Contains(text.Kind))
        {
            faults.Add(new EntryFault("kind", text.Kind, "This is no kind of entry.", NearestWord.Hint(text.Kind ?? "", [.. JournalKinds.All])));
            return null;
        }

        RefuseUnused(text, faults);
        DateOnly today = site is null ? place.Today : place.TodayAt(site);
        JournalEntry? entry = text.Kind switch
        {
            "done" => ReadDone(text, today, faults),
            "reading" => ReadReading(text, today, faults),
            "sighting" => ReadSighting(text, today, faults),
            _ => ReadDay("on", text.On, today, faults) is { } on ? new Mowing { SiteId = "", On = on } : null,
        };
        return faults.Count > before || site is null || entry is null ? null : entry with { SiteId = site.Id, Note = note };
    }

    private Site? ReadSite(string? written, List<EntryFault> faults)
    {
        Site? site = place.Region.Sites.FirstOrDefault(each => each.Id == written);
        if (site is null)
        {
            string problem = string.IsNullOrEmpty(written) ? "No site is named." : "There is no such site.";
            faults.Add(new EntryFault("site", written, problem, NearestWord.Hint(written ?? "", [.. place.Region.Sites.Select(each => each.Id)])));
        }

        return site;
    }

    private TreatmentDone? ReadDone(EntryText text, DateOnly today, List<EntryFault> faults)
    {
        Treatment? treatment = place.Configuration.Treatments.FirstOrDefault(each => each.Id == text.Treatment);
        if (treatment is null)
        {
            string problem = text.Treatment is null ? "No treatment is named." : "There is no such treatment.";
            faults.Add(new EntryFault("treatment", text.Treatment, problem, NearestWord.Hint(text.Treatment ?? "", [.. place.Configuration.Treatments.Select(each => each.Id)])));
        }

        DateOnly? on = ReadDay("on", text.On, today, faults);
        string active = ReadText("active", text.Active, faults) ?? "";
        DateOnly? noSeedUntil = null;
        if (text.NoSeedUntil is { } written)
        {
            noSeedUntil = DayOf(written);
            if (noSeedUntil is null) faults.Add(new EntryFault("no-seed-until", written, "This is not a day as it is written here.", "the first day on which the label allows seed, such as 2026-08-15"));
            else if (noSeedUntil < on) faults.Add(new EntryFault("no-seed-until", written, "The label's date is before the day of the treatment.", $"{on:yyyy-MM-dd}, where the label allows seed at once, or a later day"));
        }

        return treatment is null || on is not { } day ? null : new TreatmentDone { SiteId = "", On = day, Treatment = treatment.Id, Active = active, NoSeedUntil = noSeedUntil };
    }

    private static SoilReading? ReadReading(EntryText text, DateOnly today, List<EntryFault> faults)
    {
        (DateOnly? on, TimeOnly? time) = ReadTime(text.At, today, faults);
        Depth? depth = Scalar<Depth>("depth", text.Depth, UnitText.Depth, ADepth, faults);
        if (depth is { } z && z.Centimetres is < ShallowestCm or > DeepestCm) faults.Add(new EntryFault("depth", text.Depth, "The soil temperature is not estimated at this depth.", ADepth));
        Temperature? value = Scalar<Temperature>("value", text.Value, UnitText.Temperature, AValue, faults);
        if (value is { } t && t.Celsius is < ColdestSoilC or > WarmestSoilC) faults.Add(new EntryFault("value", text.Value, "No soil under turf is that cold or warm.", AValue));
        return on is { } day && depth is { } known && value is { } warmth ? new SoilReading { SiteId = "", On = day, At = time, Depth = known, Value = warmth } : null;
    }

    private static (DateOnly? On, TimeOnly? Time) ReadTime(string? written, DateOnly today, List<EntryFault> faults)
    {
        if (written is null)
        {
            faults.Add(new EntryFault("at", null, "It is missing.", ATime));
            return default;
        }

        string[] parts = written.Split([' ', 'T'], 2, StringSplitOptions.TrimEntries);
        bool hasTime = parts.Length == 2;
        TimeOnly time = default;
        if (DayOf(parts[0]) is not { } on || (hasTime && !TimeOnly.TryParseExact(parts[1], ["HH:mm", "H:mm"], CultureInfo.InvariantCulture, DateTimeStyles.None, out time)))
        {
            faults.Add(new EntryFault("at", written, "This is not a day and time as they are written here.", ATime));
            return default;
        }

        return IsPossible("at", written, on, today, faults) ? (on, hasTime ? time : null) : default;
    }

    private static Sighting? ReadSighting(EntryText text, DateOnly today, List<EntryFault> faults)
    {
        DateOnly? on = ReadDay("on", text.On, today, faults);
        bool plain = text.What is { Length: <= 60 } what && PlainName().IsMatch(what);
        if (!plain) faults.Add(new EntryFault("what", text.What, "What was seen is not said short and plain.", "lower-case letters a to z, digits and single hyphens, such as first-beetle or first-seedlings"));
        return on is { } day && plain ? new Sighting { SiteId = "", On = day, What = text.What! } : null;
    }

    private static DateOnly? ReadDay(string part, string? written, DateOnly today, List<EntryFault> faults)
    {
        // On the command line, nothing written is today; a file's row says its day.
        if (written is null) return today;
        if (DayOf(written) is not { } day)
        {
            faults.Add(new EntryFault(part, written, written.Length == 0 ? "The day is missing." : "This is not a day as it is written here.", ADay));
            return null;
        }

        return IsPossible(part, written, day, today, faults) ? day : null;
    }

    private static bool IsPossible(string part, string written, DateOnly day, DateOnly today, List<EntryFault> faults)
    {
        if (day > today) faults.Add(new EntryFault(part, written, "This day is still to come.", ADay));
        else if (day < EarliestDay) faults.Add(new EntryFault(part, written, $"This day is before the year {EarliestDay.Year}.", ADay));
        return day <= today && day >= EarliestDay;
    }

    private static DateOnly? DayOf(string written) =>
        DateOnly.TryParseExact(written, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out DateOnly day) ? day : null;

    private static T? Scalar<T>(string part, string? written, Func<string, ScalarReading> read, string accepted, List<EntryFault> faults)
        where T : struct
    {
        if (written is null)
        {
            faults.Add(new EntryFault(part, null, "It is missing.", accepted));
            return null;
        }

        ScalarReading reading = read(written);
        if (reading.Value is T value) return value;
        faults.Add(new EntryFault(part, written, reading.Problem ?? "It cannot be read.", accepted));
        return null;
    }

    /// <summary>A text on one line, without the white space around it; null where nothing was written.</summary>
    public static string? ReadText(string part, string? written, List<EntryFault> faults)
    {
        if (written is null) return null;
        if (written.Length > LongestText || written.Any(char.IsControl))
        {
            faults.Add(new EntryFault(part, written, "This text is too long, or has a line break or another control sign in it.", $"one line of at most {LongestText} letters"));
        }

        return written.Trim();
    }

    /// <summary>Something written that this kind of entry has no place for would be lost in silence.</summary>
    private static void RefuseUnused(EntryText text, List<EntryFault> faults)
    {
        (string Part, string? Written, string[] Kinds)[] parts =
        [
            ("on", text.On, ["done", "sighting", "mowing"]), ("at", text.At, ["reading"]), ("treatment", text.Treatment, ["done"]),
            ("active", text.Active, ["done"]), ("no-seed-until", text.NoSeedUntil, ["done"]), ("what", text.What, ["sighting"]),
            ("depth", text.Depth, ["reading"]), ("value", text.Value, ["reading"]),
        ];
        foreach ((string part, string? written, string[] kinds) in parts)
        {
            if (written is not null && !kinds.Contains(text.Kind)) faults.Add(new EntryFault(part, written, $"An entry of the kind {text.Kind} has no {part}.", "nothing here"));
        }
    }

    [GeneratedRegex("^[a-z0-9]+(-[a-z0-9]+)*$", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex PlainName();
}
