using GddWatch.Agronomy.Backtesting;
using GddWatch.Agronomy.Backtesting.Rivals;
using GddWatch.Agronomy.Backtesting.Scores;
using GddWatch.Agronomy.Backtesting.Variants;
using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Treatments;
using GddWatch.Agronomy.Windows;
using GddWatch.Commands.Backtesting;
using GddWatch.Commands.Output;

namespace GddWatch.Reports;

/// <summary>One treatment in the report.</summary>
internal sealed class TreatmentPart
{
    private const int SitesInTable = 4;

    private readonly PastSeasons past;
    private readonly TreatmentComparison comparison;
    private readonly ChartDrawing drawing;
    private readonly ReadersUnits units;
    private readonly BacktestSummary[] summaries;
    private readonly (Site Site, ComparedSeason[] Seasons)[] sites;
    private readonly ComparedSeason[] certain;

    public TreatmentPart(PastSeasons past, TreatmentComparison comparison, ChartDrawing drawing)
    {
        this.past = past;
        this.comparison = comparison;
        this.drawing = drawing;
        units = past.Region.Units;
        summaries = [.. past.Summaries.Where(summary => summary.Treatment == comparison.Treatment.Id)];
        sites = [.. comparison.Seasons.GroupBy(season => season.Dates.Site, StringComparer.Ordinal).Select(group => (group.First().Dates.Window.Site, group.ToArray()))];
        certain = [.. comparison.Seasons.Where(season => season.Dates.OpensForCertain is not null)];
    }

    private Treatment Treatment => comparison.Treatment;

    /// <summary>The season's first day that ticks are counted from: that of the first site, whose hemisphere decides how dates are written.</summary>
    private DateOnly FirstDay => Treatment.Season.BeginningIn(2023, sites[0].Site.Hemisphere).Span.First;

    public TreatmentView View()
    {
        VariantOutcome[] variants = [.. past.WhatIf.Where(each => each.Treatment == Treatment.Id)];
        return new TreatmentView
        {
            Id = Treatment.Id,
            Name = Treatment.Name,
            Rules = [.. Rules()],
            Findings = [.. Findings()],
            Charts = certain.Length == 0 ? [] : [DatesChart(), SpreadChart()],
            Tables = [Spread(), .. Rivals(), .. Scores(), .. BySeason()],
            WhatIfTitle = WhatIfTitle(variants),
            WhatIfCharts = [.. WhatIfChart(variants)],
            WhatIfTables = [.. WhatIfTables(variants)],
        };
    }

    private IEnumerable<string> Rules()
    {
        yield return $"Looked for from {Wording.AnnualDay(Treatment.Season.From)} to {Wording.AnnualDay(Treatment.Season.Until)}{(sites.Any(site => site.Site.Hemisphere == Hemisphere.Southern) ? ", half a year later in the south" : "")}.";
        yield return $"Opens when {Treatment.Opens.Explain(units)}.";
        if (Treatment.Closing is { } closing) yield return $"Past its best when {closing.Explain(units)}.";
        yield return Treatment.Closed is { } closed ? $"Closes when {closed.Explain(units)}, or with its season." : "Closes with its season.";
        if (Treatment.Paused is { } paused) yield return $"An open window waits while {paused.Explain(units)}.";
    }

    private IEnumerable<string> Findings()
    {
        int seasons = comparison.Seasons.Count;
        string where = sites.Length == 1 ? sites[0].Site.Name : $"{sites.Length} sites";
        if (certain.Length == 0)
        {
            yield return $"In {seasons} seasons at {where} it never opened for certain.";
            yield break;
        }

        ComparedSeason earliest = certain.MinBy(Offset)!, latest = certain.MaxBy(Offset)!;
        int never = comparison.Seasons.Count(season => season.Dates.NeverOpened);
        yield return $"In {seasons} seasons at {where} it opened for certain {certain.Length} times, between {NameAndDay(earliest)} and {NameAndDay(latest)}{(never > 0 ? $"; it never opened in {never}" : "")}.";
        if (RivalAgreement.Of(comparison.Seasons, Rival.Calendar) is { } calendar)
        {
            yield return $"{RivalWords.WithRule(comparison, Rival.Calendar, units)} lies {Beside(calendar.MeanDaysAfterOpening)} in the mean, and falls into the open window in {calendar.InsideWindow} of {calendar.Seasons} seasons.";
        }

        if (past.Scores.GetValueOrDefault(Treatment.Id) is [{ Rival: Rival.Window } window, ..] scores)
        {
            string other = scores.FirstOrDefault(each => each.Rival == Rival.Calendar) is { } fixedDate ? $"; the date on the calendar by {ReportText.Days(fixedDate.Score.MeanAbsoluteErrorDays)}" : "";
            yield return $"Against what was seen in {window.Score.Seasons} seasons the window was off by {ReportText.Days(window.Score.MeanAbsoluteErrorDays)} in the mean{ReportText.Interval(window.Score.MeanAbsoluteErrorInterval)}{other}.";
        }
        else
        {
            yield return "Nothing seen outdoors is known for it, so no date is scored.";
        }
    }

    private ChartView DatesChart()
    {
        (Site Site, ComparedSeason[] Seasons)[] shown = [.. sites.Where(site => site.Seasons.Any(season => season.Dates.OpensForCertain is not null)).Take(ReportCharts.MostSeries)];
        string more = sites.Length > shown.Length ? $" {shown.Length} of {sites.Length} sites are drawn; the table has all." : "";
        return drawing.Draw(
            chart => chart.DatesByYear(
                [.. shown.Select(site => (site.Site.Name, Years(Certain(site.Seasons)), (double[])[.. Certain(site.Seasons).Select(Offset)]))],
                [.. shown.Select(site => SeenAt([.. site.Seasons.Where(season => season.Seen is not null)]))],
                FixedDates(),
                FirstDay),
            $"Opening dates by year. {string.Join(" ", shown.Select(site => $"{site.Site.Name}: from {NameAndDay(Certain(site.Seasons).MinBy(Offset)!, false)} to {NameAndDay(Certain(site.Seasons).MaxBy(Offset)!, false)}."))} The table by season below has every date.",
            $"When the window opened in each season{(FixedDates().Count > 0 ? ", with the date on the calendar across" : "")}.{(comparison.HasObservations ? " Stars: when it should have opened by what was seen at the site of their colour." : "")}{South()}{more}");
    }

    private ChartView SpreadChart()
    {
        BacktestSummary[] opened = [.. summaries.Where(summary => summary.MedianOpening is not null)];
        return drawing.Draw(
            chart => chart.SpreadBySite(
                [.. opened.Select(summary => (NameOf(summary.Site), Place(summary, summary.EarliestOpening)!.Value, Place(summary, summary.EarlyOpening), Place(summary, summary.MedianOpening)!.Value, Place(summary, summary.LateOpening), Place(summary, summary.LatestOpening)!.Value))],
                FixedDates(),
                FirstDay),
            $"Spread of the opening dates by site. {string.Join(" ", opened.Select(summary => $"{NameOf(summary.Site)}: {ReportText.Day(summary.EarliestOpening)} to {ReportText.Day(summary.LatestOpening)}, median {ReportText.Day(summary.MedianOpening)}."))}",
            $"How far the opening dates lie apart at each site: the thin line from the earliest to the latest, the broad one where eight of ten seasons lie, the diamond at the median{(FixedDates().Count > 0 ? "; dashed, the date on the calendar" : "")}.{South()}");
    }

    private TableView Spread() => new(
        "Openings and closes by site",
        ["Site", "Seasons", "Opened", "Never", "Median opening", "Earliest", "Latest", "Spread", "Median close", "Open for", "Times opened again"],
        [.. summaries.Select(summary => new RowView(
            NameOf(summary.Site),
            [
                $"{summary.Seasons}", summary.OpenedUncertain > 0 ? $"{summary.Opened} (and {summary.OpenedUncertain} uncertain)" : $"{summary.Opened}", $"{summary.NeverOpened - summary.NotJudged}",
                ReportText.Day(summary.MedianOpening), ReportText.Day(summary.EarliestOpening), ReportText.Day(summary.LatestOpening),
                summary.OpeningSpreadDays is { } spread ? $"± {ReportText.Days(spread)}" : ReportText.None, ReportText.Day(summary.MedianClose),
                summary.MedianDaysOpen is { } days ? Wording.Days((int)Math.Round(days)) : ReportText.None, $"{summary.Reopenings}",
            ]))],
        summaries.Any(summary => summary.NotJudged > 0) ? [$"{summaries.Sum(summary => summary.NotJudged)} seasons could not be judged to the end, for want of weather."] : []);

    private IEnumerable<TableView> Rivals()
    {
        RivalAgreement[] agreements = [.. Enum.GetValues<Rival>().Where(rival => rival != Rival.Window).Select(rival => RivalAgreement.Of(comparison.Seasons, rival)).OfType<RivalAgreement>()];
        if (agreements.Length == 0) yield break;
        yield return new TableView(
            "Other ways to find the day, beside the window",
            ["Way", "Seasons", "Beside the opening", "Apart", "Inside the open window"],
            [.. agreements.Select(each => new RowView(
                RivalWords.WithRule(comparison, each.Rival, units),
                [$"{each.Seasons}", Beside(each.MeanDaysAfterOpening), ReportText.Days(each.MeanDaysApart), $"{each.InsideWindow} of {each.Seasons}"]))],
            ["Beside the opening: in the mean of the seasons, so that early and late can cancel out; apart counts both. None of this says who is right: only what was seen outdoors does."]);
    }

    private IEnumerable<TableView> Scores()
    {
        if (past.Scores.GetValueOrDefault(Treatment.Id) is not { Count: > 0 } scores) yield break;
        yield return new TableView(
            $"Scores against what was seen; a hit lies within {Wording.Days(past.WithinDays)}",
            ["Way", "Seasons", "Hits", "Misses", "False", "Off by", "Late or early", "Better than the calendar", "Better than the best fixed date"],
            [.. scores.Select(each => new RowView(
                RivalWords.ForPeople(each.Rival),
                [
                    $"{each.Score.Seasons}", $"{each.Score.Hits}", each.Score.NeverForetold > 0 ? $"{each.Score.Misses} ({each.Score.NeverForetold} never came)" : $"{each.Score.Misses}",
                    each.Score.LookedForInVain > 0 ? $"{each.Score.FalseOpenings} of {each.Score.LookedForInVain}" : ReportText.None,
                    $"{ReportText.Days(each.Score.MeanAbsoluteErrorDays)}{ReportText.Interval(each.Score.MeanAbsoluteErrorInterval)}", $"{ReportText.Signed(each.Score.BiasDays)}{ReportText.Interval(each.Score.BiasInterval)}",
                    Skill(each.AgainstCalendar), Skill(each.AgainstBestFixedDate),
                ],
                each.Rival == Rival.Window))],
            [
                $"Each row is a way to name the day beforehand, held against the day by what was seen. A hit came within {Wording.Days(past.WithinDays)} of it on either side, a miss did not; a false opening came in a season in which somebody looked and nothing came up. Late (+) or early (−) is in the mean of the seasons, so that the two can cancel out; off by counts both. Better, in percent, is by how much smaller the error is. In brackets: 95 % intervals.",
                .. scores[0].Score.Groups < Bootstrap.FewGroups ? (string[])[$"{scores[0].Score.Groups} years are few: the intervals in brackets say little."] : [],
            ]);
    }

    private IEnumerable<TableView> BySeason()
    {
        int[] years = [.. comparison.Seasons.Select(season => season.Dates.Year).Distinct().Order()];
        foreach ((Site Site, ComparedSeason[] Seasons)[] some in SitesByTable())
        {
            yield return new TableView(
                $"Opening to close, season by season{NamesOf(some)}",
                ["Season", .. some.Select(site => site.Site.Name)],
                [.. years.Select(year => new RowView($"{year}", [.. some.Select(site => SpanText(site.Seasons.FirstOrDefault(season => season.Dates.Year == year)))]))],
                [$"* too little was known just before, so it may have opened earlier.{(comparison.HasObservations ? " In brackets: how many days later (+) or earlier (−) than it should have been by what was seen." : "")}"]);
        }
    }

    private IEnumerable<ChartView> WhatIfChart(VariantOutcome[] variants)
    {
        VariantOutcome[] moved = [.. variants.Where(each => each is { Variations.Count: 1, MeanDaysLater: not null })];
        if (moved.Length < 3 || moved.Select(each => each.Variations[0].Part).Distinct().Count() != 1) yield break;
        VariedPart part = moved[0].Variations[0].Part;
        double inUse = TreatmentVariants.InUse(Treatment, part)!.Value;
        yield return drawing.Draw(
            chart => chart.Sensitivity(
                $"{moved[0].Variations[0].PartInWords} [{UnitOf(part)}]",
                [.. moved.Select(each => Shown(part, each.Variations[0].Value))],
                [.. moved.Select(each => each.MeanDaysLater!.Value)],
                [.. moved.Select(each => (double)each.DaysLaterRange!.Value.Least)],
                [.. moved.Select(each => (double)each.DaysLaterRange!.Value.Most)],
                Shown(part, inUse)),
            $"How openings move with the {moved[0].Variations[0].PartInWords}: {Wording.List([.. moved.Select(each => $"{each.Variations[0].ValueInWords(units)} {ReportText.LaterOrEarlier(each.MeanDaysLater!.Value)}")])}, in the mean.",
            $"By how many days the opening moves when the {moved[0].Variations[0].PartInWords} is another: the line is the mean of all seasons and sites, the bars reach from the one that moves least to the one that moves most; dashed, the value in use. All else of the rule stays.{(WhatIfWords.OfBase(Treatment, moved[0].Variations, units) is { } words ? $" {words}" : "")}");
    }

    private IEnumerable<TableView> WhatIfTables(VariantOutcome[] variants)
    {
        if (variants.Length == 0) yield break;
        bool scored = variants.Any(each => each.Score is not null);
        yield return new TableView(
            "What another value would change, over all seasons and sites",
            ["With", "Opened", "Never", "Times opened again", "Opening, in the mean", "From", "To", .. scored ? (string[])["Off by", "Hits"] : []],
            [.. variants.Select(each => new RowView(
                WordsOf(each),
                [
                    $"{each.Opened} of {each.Seasons}", $"{each.NeverOpened}", $"{each.Reopenings}",
                    each.MeanDaysLater is { } later ? ReportText.LaterOrEarlier(later) : ReportText.None,
                    each.DaysLaterRange is { } range ? ReportText.Signed(range.Least) : ReportText.None,
                    each.DaysLaterRange is { } same ? ReportText.Signed(same.Most) : ReportText.None,
                    .. scored ? (string[])[each.Score is { } score ? ReportText.Days(score.MeanAbsoluteErrorDays) : ReportText.None, each.Score is { } hit ? $"{hit.Hits} of {hit.Seasons}" : ReportText.None] : [],
                ],
                IsInUse(each)))],
            [.. Remarks(variants)]);
        foreach ((Site Site, ComparedSeason[] Seasons)[] some in SitesByTable())
        {
            yield return new TableView(
                $"Median opening by site with another value{NamesOf(some)}",
                ["With", .. some.Select(site => site.Site.Name)],
                [.. variants.Select(each => new RowView(WordsOf(each), [.. some.Select(site => ReportText.Day(each.Sites.FirstOrDefault(one => one.Site == site.Site.Id)?.MedianOpening))], IsInUse(each)))],
                []);
        }
    }

    /// <summary>The sites in tables of about the same width, none wider than a page.</summary>
    private IEnumerable<(Site Site, ComparedSeason[] Seasons)[]> SitesByTable()
    {
        int tables = (sites.Length + SitesInTable - 1) / SitesInTable;
        return sites.Chunk((sites.Length + tables - 1) / tables);
    }

    private string NamesOf((Site Site, ComparedSeason[] Seasons)[] some)
    {
        if (some.Length == sites.Length) return "";
        return some.Length == 1 ? $": {some[0].Site.Name}" : $": {some[0].Site.Name} to {some[^1].Site.Name}";
    }

    private static string WhatIfTitle(VariantOutcome[] variants) =>
        variants.SelectMany(each => each.Variations).All(each => each.Part is VariedPart.SoilThreshold or VariedPart.AirThreshold or VariedPart.Heat) ? "If the threshold were another" : "If the rule were another";

    private IEnumerable<string> Remarks(VariantOutcome[] variants)
    {
        yield return $"{(variants.Any(IsInUse) ? "Set apart: as it is now. " : "")}{WhatIfWords.AllElseStays} Never: seasons in which it would not have opened. From and to: the season that moves most towards earlier, and the one that moves most towards later.";
        if (variants.Select(each => WhatIfWords.OfBase(Treatment, each.Variations, units)).FirstOrDefault(words => words is not null) is { } words) yield return words;
    }

    private bool IsInUse(VariantOutcome variant) => variant.Variations.All(each => TreatmentVariants.InUse(Treatment, each.Part) is { } now && Math.Abs(now - each.Value) < 1e-6);

    private string WordsOf(VariantOutcome variant) => Wording.Capital(Wording.List([.. variant.Variations.Select(each => $"{each.PartInWords} {each.ValueInWords(units)}")]));

    private double Shown(VariedPart part, double value) => part switch
    {
        VariedPart.SoilThreshold or VariedPart.AirThreshold or VariedPart.BaseTemperature => ReportText.Degrees(value, units),
        VariedPart.Heat => ReportText.Heat(value, units),
        VariedPart.SoilDepth when units == ReadersUnits.UnitedStates => value / 2.54,
        _ => value,
    };

    private string UnitOf(VariedPart part)
    {
        bool us = units == ReadersUnits.UnitedStates;
        return part switch
        {
            VariedPart.Heat => us ? "°F-days" : "°C-days",
            VariedPart.AveragingDays => "days",
            VariedPart.SoilDepth => us ? "inches" : "cm",
            _ => us ? "°F" : "°C",
        };
    }

    private IReadOnlyList<(string Name, double Day)> FixedDates()
    {
        if (comparison.Seasons.FirstOrDefault(season => season.Calendar is not null) is not { } any) return [];
        return [($"on the calendar: {ReportText.Day(AnnualDay.Of(any.Calendar!.Value))}", any.Calendar!.Value.DayNumber - any.Dates.Window.Season.Span.First.DayNumber)];
    }

    private string South() => sites.Select(site => site.Site.Hemisphere).Distinct().Count() > 1 ? " Sites south of the equator are drawn half a year earlier, so that seasons lie beside each other." : "";

    private static string SpanText(ComparedSeason? season)
    {
        if (season is null) return ReportText.None;
        Window window = season.Dates.Window;
        if (season.Dates.Opens is not { } opens) return window.CouldNotBeJudged ? "not judged" : "did not open";
        string late = season is { Seen: { } seen, Dates.OpensForCertain: not null } ? $" ({opens.DayNumber - seen.DayNumber:+0;−0;0})" : "";
        return $"{Dates.Short(opens)}{(window.MayHaveOpenedEarlier ? "*" : "")}{late} to {ReportText.Day(season.Dates.Closes)}";
    }

    private static string Skill(DateSkill? skill) => skill is null ? ReportText.None : $"{100 * skill.Skill:0;−0;0} %{ReportText.Interval(skill.Interval, 100, " %")}";

    private static string Beside(double daysAfter) => Math.Abs(daysAfter) < 0.05 ? "on the opening" : $"{ReportText.Days(Math.Abs(daysAfter))} {(daysAfter > 0 ? "after" : "before")} the opening";

    private string NameAndDay(ComparedSeason season, bool withSite = true) =>
        $"{Wording.Day(season.Dates.OpensForCertain!.Value)}{(withSite && sites.Length > 1 ? $" ({season.Dates.Window.Site.Name})" : "")}";

    private string NameOf(string site) => sites.First(each => each.Site.Id == site).Site.Name;

    /// <summary>A day of the year as a day of the season.</summary>
    private double? Place(BacktestSummary summary, AnnualDay? day)
    {
        if (day is not { } known) return null;
        Season season = Treatment.Season.BeginningIn(2023, sites.First(each => each.Site.Id == summary.Site).Site.Hemisphere);
        return season.Nearest(known).DayNumber - season.Span.First.DayNumber;
    }

    private static ComparedSeason[] Certain(ComparedSeason[] seasons) => [.. seasons.Where(season => season.Dates.OpensForCertain is not null)];

    private static (double[] Years, double[] Days) SeenAt(ComparedSeason[] seen) =>
        (Years(seen), [.. seen.Select(season => (double)(season.Seen!.Value.DayNumber - season.Dates.Window.Season.Span.First.DayNumber))]);

    private static double[] Years(IEnumerable<ComparedSeason> seasons) => [.. seasons.Select(season => (double)season.Dates.Year)];

    private static double Offset(ComparedSeason season) => season.Dates.OpensForCertain!.Value.DayNumber - season.Dates.Window.Season.Span.First.DayNumber;
}
