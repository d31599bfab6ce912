using GddWatch.Agronomy.Backtesting.Scores;
using GddWatch.Agronomy.Journal;
using GddWatch.Agronomy.Treatments;
using GddWatch.Feeds.Faults;
using GddWatch.Watching;

namespace GddWatch.Commands.Backtesting;

/// <summary>What was seen outdoors: in the journal, and in a file.</summary>
internal static class Observations
{
    private const int MostShown = 5;

    /// <summary>All of it; null, with what is wrong told on the error stream, where the file as a whole cannot be used.</summary>
    public static async Task<ObservedDates?> ReadAsync(string? file, Keeping keeping, Workplace place, Terminal terminal, CancellationToken stop)
    {
        IReadOnlyDictionary<string, SiteJournal> journals = await Journals.LoadAsync(keeping, stop);
        ObservedDate[] recorded = [.. journals.SelectMany(journal => journal.Value.Entries.OfType<Sighting>().Select(sighting => new ObservedDate(journal.Key, sighting.What, null, sighting.On)))];
        if (file is null) return new ObservedDates(recorded);
        var reader = new ObservedFile(file, [.. place.Region.Sites.Select(site => site.Id)]);
        IReadOnlyList<ObservedDate> read = reader.Read();
        foreach (Fault fault in reader.Faults) terminal.Error.WriteLine(fault);
        return reader.Faults.Any(fault => fault.Severity == FaultSeverity.Refused) || (read.Count == 0 && reader.Faults.Count > 0) ? null : new ObservedDates([.. recorded, .. read]);
    }

    /// <summary>Says which dates lie in no season that was judged, so that nobody believes them scored.</summary>
    public static void TellOutside(ObservedDates observed, IReadOnlyList<JudgedSeason> judged, Terminal terminal)
    {
        if (observed.All.Count == 0) return;
        ILookup<string, JudgedSeason> seasons = judged.ToLookup(each => each.Site.Id, StringComparer.Ordinal);
        string[] outside = [.. observed.All
            .Where(each => seasons[each.Site].Where(season => IsComparedWith(season.Treatment, each.What)).ToArray() is { Length: > 0 } own && !own.Any(season => Target.IsOf(each, season.Season)))
            .Select(each => $"{each.What} at {each.Site}, {(each.Day is { } day ? Wording.Day(day) : $"season {each.Year}")}")];
        if (outside.Length == 0) return;
        terminal.Error.WriteLine($"Seen in no season that was judged, and so not scored: {string.Join("; ", outside.Take(MostShown))}{(outside.Length > MostShown ? $"; and {outside.Length - MostShown} more" : "")}. Judged were {judged.Min(each => each.Season.Year)} to {judged.Max(each => each.Season.Year)}.");
    }

    /// <summary>Says what was seen more than once in a season, and which of the days counts.</summary>
    public static void TellSeveral(ObservedDates observed, IReadOnlyList<JudgedSeason> judged, Terminal terminal)
    {
        if (observed.All.Count == 0) return;
        string[] several =
        [
            .. (from season in judged
                from what in season.Treatment.CompareWith.Seen.Select(seen => seen.What).Prepend(season.Treatment.Id)
                let days = observed.Of(season.Site.Id, what).Where(each => Target.IsOf(each, season.Season)).Select(each => each.Day).OfType<DateOnly>().Distinct().Order().ToArray()
                where days.Length > 1
                select $"{what} at {season.Site.Id} on {string.Join(" and on ", days.Select(Wording.Day))}").Distinct(StringComparer.Ordinal),
        ];
        if (several.Length == 0) return;
        terminal.Error.WriteLine($"Seen more than once in a season, of which the first day counts: {string.Join("; ", several.Take(MostShown))}{(several.Length > MostShown ? $"; and {several.Length - MostShown} more" : "")}.");
    }

    /// <summary>Says what was seen that no treatment is compared with.</summary>
    public static void TellUnused(ObservedDates observed, IReadOnlyList<Treatment> treatments, Terminal terminal)
    {
        HashSet<string> used = [.. treatments.SelectMany(treatment => treatment.CompareWith.Seen.Select(seen => seen.What).Append(treatment.Id))];
        foreach (string what in observed.All.Select(each => each.What).Distinct(StringComparer.Ordinal).Where(what => !used.Contains(what)))
        {
            terminal.Error.WriteLine($"\"{what}\" was seen, and no treatment is compared with it: name it under compare-with of a treatment, or find thresholds for it by `gddwatch fit {what}`.");
        }
    }

    private static bool IsComparedWith(Treatment treatment, string what) => treatment.Id == what || treatment.CompareWith.Seen.Any(seen => seen.What == what);
}
