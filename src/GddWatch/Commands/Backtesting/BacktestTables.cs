using GddWatch.Agronomy.Backtesting;
using GddWatch.Agronomy.Backtesting.Rivals;
using GddWatch.Agronomy.Backtesting.Scores;
using GddWatch.Agronomy.Backtesting.Variants;
using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Windows;
using GddWatch.Commands.Output;

namespace GddWatch.Commands.Backtesting;

/// <summary>All that a backtest shows, as tables for programs.</summary>
internal static class BacktestTables
{
    /// <summary>The names that <c>--table</c> takes, the one it takes by itself first.</summary>
    public static IReadOnlyList<string> Names { get; } = ["windows", "summary", "compared", "rivals", "scores", "whatIf", "whatIfSites", "ranges"];

    public static ProgramTable Of(string name, PastSeasons past) => name switch
    {
        "windows" => Windows(past.Windows),
        "summary" => Summary(past),
        "compared" => Compared(past),
        "rivals" => Rivals(past),
        "scores" => Scores(past),
        "whatIf" => WhatIf(past),
        "whatIfSites" => WhatIfSites(past),
        "ranges" => Ranges(past),
        _ => throw new ArgumentOutOfRangeException(nameof(name), name, "There is no such table."),
    };

    /// <summary>Windows, a row each.</summary>
    public static ProgramTable Windows(IEnumerable<Window> windows) => new(
        "windows",
        ["site", "treatment", "season", "opens", "closes", "opensBecause", "closesBecause", "pastBest", "mayHaveOpenedEarlier", "opensByFallback", "closesByFallback", "couldNotBeJudged", "daysOpen", "reopenings"],
        windows.Select(window => (object?[])
        [
            window.Site.Id, window.Treatment.Id, window.Season.Year, window.FirstOpening?.Day, window.LastClosing?.Day,
            window.FirstOpening?.Because ?? window.Because, window.LastClosing?.Because,
            window.PastBest?.Day, window.MayHaveOpenedEarlier, window.FirstOpening?.Because.RestsOnFallback ?? false, window.LastClosing?.Because.RestsOnFallback ?? false,
            window.CouldNotBeJudged, new SeasonDates(window).DaysOpen, window.Reopenings,
        ]));

    private static ProgramTable Summary(PastSeasons past) => new(
        "summary",
        ["site", "treatment", "seasons", "opened", "openedUncertain", "neverOpened", "reopenings", "medianOpening", "earliestOpening", "latestOpening", "openingSpreadDays", "medianClose",
            "notJudged", "earlyOpening", "lateOpening", "earliestClose", "latestClose", "medianDaysOpen", "quantiles"],
        past.Summaries.Select(summary => (object?[])
        [
            summary.Site, summary.Treatment, summary.Seasons, summary.Opened, summary.OpenedUncertain, summary.NeverOpened, summary.Reopenings, summary.MedianOpening?.ToString(),
            summary.EarliestOpening?.ToString(), summary.LatestOpening?.ToString(), summary.OpeningSpreadDays, summary.MedianClose?.ToString(),
            summary.NotJudged, summary.EarlyOpening?.ToString(), summary.LateOpening?.ToString(), summary.EarliestClose?.ToString(), summary.LatestClose?.ToString(), summary.MedianDaysOpen,
            "Hyndman and Fan 1996, type 8",
        ]));

    private static ProgramTable Compared(PastSeasons past) => new(
        "compared",
        ["site", "treatment", "season", "opens", "calendar", "bestFixedDate", "runningMean", "shouldHaveOpened", "lookedForInVain", "daysLate"],
        past.Comparisons.SelectMany(comparison => comparison.Seasons.Select(season => (object?[])
        [
            season.Dates.Site, comparison.Treatment.Id, season.Dates.Year, season.Dates.OpensForCertain, season.Calendar, season.BestFixedDate, season.RunningMean, season.Seen, season.LookedForInVain,
            season is { Seen: { } seen, Dates.OpensForCertain: { } opens } ? opens.DayNumber - seen.DayNumber : null,
        ])));

    private static ProgramTable Rivals(PastSeasons past) => new(
        "rivals",
        ["treatment", "rival", "rule", "seasons", "meanDaysAfterOpening", "meanDaysApart", "insideWindow"],
        past.Comparisons.SelectMany(comparison => Enum.GetValues<Rival>()
            .Where(rival => rival != Rival.Window)
            .Select(rival => RivalAgreement.Of(comparison.Seasons, rival))
            .OfType<RivalAgreement>()
            .Select(each => (object?[])
            [
                comparison.Treatment.Id, RivalWords.Plain(each.Rival), RuleOf(comparison, each.Rival), each.Seasons, each.MeanDaysAfterOpening, each.MeanDaysApart, each.InsideWindow,
            ])));

    private static string RuleOf(TreatmentComparison comparison, Rival rival) => rival switch
    {
        Rival.Calendar => $"{comparison.Treatment.CompareWith.Calendar}, written for the north",
        Rival.BestFixedDate => $"median of the other years{(comparison.HasObservations ? "' observed dates" : "' openings")}, the year left out at every site",
        _ => comparison.RunningMean?.InWords(ReadersUnits.Metric) ?? "",
    };

    private static ProgramTable Scores(PastSeasons past) => new(
        "scores",
        ["treatment", "rival", "seasons", "withinDays", "hits", "misses", "neverForetold", "falseOpenings", "lookedForInVain",
            "meanAbsoluteErrorDays", "meanAbsoluteErrorLow", "meanAbsoluteErrorHigh", "biasDays", "biasLow", "biasHigh", "rootMeanSquareErrorDays",
            "skillAgainstCalendar", "skillAgainstCalendarLow", "skillAgainstCalendarHigh", "daysNearerThanCalendar", "daysNearerThanCalendarLow", "daysNearerThanCalendarHigh",
            "skillAgainstBestFixedDate", "skillAgainstBestFixedDateLow", "skillAgainstBestFixedDateHigh", "groups", "level", "draws", "seed"],
        past.Scores.SelectMany(treatment => treatment.Value.Select(each => (object?[])
        [
            treatment.Key, RivalWords.Plain(each.Rival), each.Score.Seasons, each.Score.WithinDays, each.Score.Hits, each.Score.Misses, each.Score.NeverForetold, each.Score.FalseOpenings, each.Score.LookedForInVain,
            each.Score.MeanAbsoluteErrorDays, each.Score.MeanAbsoluteErrorInterval?.Low, each.Score.MeanAbsoluteErrorInterval?.High, each.Score.BiasDays, each.Score.BiasInterval?.Low, each.Score.BiasInterval?.High,
            each.Score.RootMeanSquareErrorDays,
            each.AgainstCalendar?.Skill, each.AgainstCalendar?.Interval?.Low, each.AgainstCalendar?.Interval?.High, each.AgainstCalendar?.DaysNearer, each.AgainstCalendar?.DaysNearerInterval?.Low, each.AgainstCalendar?.DaysNearerInterval?.High,
            each.AgainstBestFixedDate?.Skill, each.AgainstBestFixedDate?.Interval?.Low, each.AgainstBestFixedDate?.Interval?.High,
            each.Score.Groups, Bootstrap.UsualLevel, Bootstrap.UsualDraws, PastSeasons.Seed,
        ])));

    private static ProgramTable WhatIf(PastSeasons past) => new(
        "whatIf",
        ["treatment", "whatIf", "seasons", "opened", "neverOpened", "reopenings", "meanDaysLater", "leastDaysLater", "mostDaysLater", "observedSeasons", "hits", "misses", "meanAbsoluteErrorDays", "biasDays", "remark"],
        past.WhatIf.Select(each => (object?[])
        [
            each.Treatment, Words(each.Variations), each.Seasons, each.Opened, each.NeverOpened, each.Reopenings, each.MeanDaysLater, each.DaysLaterRange?.Least, each.DaysLaterRange?.Most,
            each.Score?.Seasons, each.Score?.Hits, each.Score?.Misses, each.Score?.MeanAbsoluteErrorDays, each.Score?.BiasDays,
            WhatIfWords.OfBase(past.Comparisons.Single(one => one.Treatment.Id == each.Treatment).Treatment, each.Variations, ReadersUnits.Metric),
        ]));

    private static ProgramTable WhatIfSites(PastSeasons past) => new(
        "whatIfSites",
        ["treatment", "whatIf", "site", "seasons", "opened", "neverOpened", "medianOpening", "earliestOpening", "latestOpening", "openingSpreadDays"],
        past.WhatIf.SelectMany(each => each.Sites.Select(site => (object?[])
        [
            each.Treatment, Words(each.Variations), site.Site, site.Seasons, site.Opened, site.NeverOpened, site.MedianOpening?.ToString(), site.EarliestOpening?.ToString(), site.LatestOpening?.ToString(), site.OpeningSpreadDays,
        ])));

    private static ProgramTable Ranges(PastSeasons past) => new(
        "ranges",
        ["site", "figure", "day", "value", "low", "median", "high", "earlierYears"],
        past.Sites.SelectMany(site => RangeRows(site.Site.Id, "soil temperature at 5 cm, 7-day mean, °C", site.Soil).Concat(RangeRows(site.Site.Id, "heat above 10 °C, simple average, °C-days", site.HeatSum))));

    private static IEnumerable<object?[]> RangeRows(string site, string figure, YearRange? range)
    {
        if (range is null) yield break;
        for (int day = 0; day < range.Now.Count; day++)
        {
            yield return [site, figure, range.First.AddDays(day), range.Now[day], range.Low[day], range.Middle[day], range.High[day], range.EarlierYears];
        }
    }

    private static string Words(IReadOnlyList<Variation> variations) => string.Join("; ", variations.Select(each => $"{each.PartInWords} {each.ValueInWords(ReadersUnits.Metric)}"));
}
