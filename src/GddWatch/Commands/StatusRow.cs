using GddWatch.Agronomy.Chances;
using GddWatch.Agronomy.Changes;
using GddWatch.Agronomy.Journal;
using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Treatments;
using GddWatch.Agronomy.Windows;
using GddWatch.Commands.Output;
using GddWatch.Watching;

namespace GddWatch.Commands;

/// <summary>One window in the answer of <c>status</c>.</summary>
internal sealed class StatusRow(Window window, WindowChances? chances, Standing standing, SiteJournal journal, Region region, IReadOnlyList<ConfigurationNote> notes)
{
    public static readonly IReadOnlyList<string> Columns = ["site", "treatment", "season", "state", "since", "reason", "chances"];

    public string SiteName => window.Site.Name;

    /// <summary>Whether its season is still to come.</summary>
    public bool IsToCome => window.State == WindowState.Waiting && window.Since > standing.Day;

    /// <summary>A window whose season is still to come, in a few words.</summary>
    public string ToComeWords => $"{window.Treatment.Name} (from {Dates.ShortWithYear(window.Since)})";

    private WindowState State => Nearing.StateOf(window, chances);

    private string? Note => notes.FirstOrDefault(note => note.IsAbout(window))?.Words;

    public object ForPrograms() => new
    {
        Site = window.Site.Id,
        Treatment = window.Treatment.Id,
        Season = window.Season.Year,
        State = WindowStates.Word(State),
        Since = Dates.Iso(window.Since),
        Reason = window.Because.Sentence(ReadersUnits.Metric),
        Chances = ChancesForPrograms(),
        HeldUntil = window.Holds.Count > 0 ? Dates.Iso(window.Holds.Max(hold => hold.FreeFrom)) : null,
        Exclusions = window.Treatment.Excludes.Select(ForPrograms),
        ConfigurationChange = Note,
    };

    /// <summary>How likely it opens, or closes, by which day; null where that cannot be said.</summary>
    private object? ChancesForPrograms() => chances is null ? null : new
    {
        Of = chances.OfClosing ? "closing" : "opening",
        Earliest = Dates.Iso(chances.Earliest),
        Median = chances.Median is { } median ? Dates.Iso(median) : null,
        Latest = chances.Latest is { } latest ? Dates.Iso(latest) : null,
        Within7Days = Math.Round(chances.Within(7), 3),
        Within14Days = Math.Round(chances.Within(14), 3),
        NotAtAll = Math.Round(chances.NotAtAll, 3),
        chances.Years,
        chances.ForecastDays,
        Words = ChancesWords.Sentence(chances),
        chances.Remarks,
    };

    public IReadOnlyList<string?> Cells() =>
    [
        window.Site.Id, window.Treatment.Id, window.Season.Year.ToString(), WindowStates.Word(State), Dates.Iso(window.Since),
        window.Because.Sentence(ReadersUnits.Metric), chances is null ? null : ChancesWords.Sentence(chances),
    ];

    public IEnumerable<string> PeopleCells(ReadersUnits units)
    {
        string why = window.Because.Sentence(units);
        if (chances is not null) why += $" {ChancesWords.Sentence(chances)} By {ChancesWords.Basis(chances)}.";
        if (window.Treatment.WhyNotTold(window.Site) is { } silent) why += $" No mail is sent about it: {silent}.";
        foreach (string remark in Remarks()) why += $" {remark}";
        if (Note is { } note) why += $" {note}";
        return [window.Treatment.Name, WindowStates.Word(State), Dates.ShortWithYear(window.Since), why];
    }

    /// <summary>What stands beside the state: local rules, the site's preference, and what is not recorded and so not known.</summary>
    private IEnumerable<string> Remarks()
    {
        foreach (LocalRule rule in region.RulesAbout(window.Site, window.Treatment.Work).Where(rule => rule.Bans(standing.Day)))
        {
            yield return $"A local rule bans {WorkKinds.Word(rule.Kind)} until {Wording.AnnualDay(rule.Until)} ({rule.Source}): no mail is sent about it.";
        }

        if (!window.IsOpen) yield break;
        if (NoticePlan.IsSettledAgainst(window, standing)) yield return $"This site prefers {NoticePlan.PreferredRival(window, standing)!.Treatment.Name}: no mail is sent about it.";
        foreach (Exclusion exclusion in window.Treatment.Excludes.Where(exclusion => journal.LastDone(exclusion.Treatment, standing.Day) is null))
        {
            yield return $"Whether {exclusion.Name} was done here is unknown: none is recorded.";
        }
    }

    private object ForPrograms(Exclusion exclusion)
    {
        TreatmentDone? done = journal.LastDone(exclusion.Treatment, standing.Day);
        return new { exclusion.Treatment, Recorded = done is null ? "unknown" : Dates.Iso(done.On) };
    }
}
