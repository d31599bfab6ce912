using System.Globalization;
using GddWatch.Agronomy.Backtesting;
using GddWatch.Agronomy.Backtesting.Rivals;
using GddWatch.Agronomy.Backtesting.Variants;
using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Treatments;
using GddWatch.Agronomy.Windows;
using GddWatch.Commands.Output;
using Spectre.Console;

namespace GddWatch.Commands.Backtesting;

/// <summary>A backtest as people read it on a terminal.</summary>
internal static class BacktestForPeople
{
    /// <summary>How many treatments stand beside each other in a table of seasons: on a terminal of 120 letters each has its dates on one line.</summary>
    private const int TreatmentsBesideEachOther = 4;

    public static void Show(PastSeasons past, Terminal terminal)
    {
        IAnsiConsole console = terminal.Tables();
        terminal.Output.WriteLine($"{past.Region.Name}: past seasons, each day judged with later days hidden");
        console.Write(Overview(past));
        foreach (IGrouping<string, Window> site in past.Windows.GroupBy(window => window.Site.Name, StringComparer.Ordinal))
        {
            foreach (Table seasons in SeasonTables(site)) console.Write(seasons);
        }

        int reopenings = past.Summaries.Sum(summary => summary.Reopenings);
        terminal.Output.WriteLine(reopenings == 0 ? "No window opened twice in a season." : $"Windows opened again within their season {reopenings} times.");
        terminal.Output.WriteLine("Each cell: opening to close. * too little was known just before, so it may have opened earlier. † a stated fallback stood in for what is usual here.");
        ShowRivals(past, console, terminal);
        ShowScores(past, console, terminal);
        ShowWhatIf(past, console, terminal);
        if (past.Region.Remark.Length > 0) terminal.Output.WriteLine(past.Region.Remark);
    }

    private static Table Overview(PastSeasons past)
    {
        Table overview = new Table().Border(TableBorder.Simple)
            .AddColumns("Site", "Treatment", "Seasons", "Opened", "Median", "Earliest", "Latest", "Spread", "Median close", "Open for");
        foreach (TableColumn column in overview.Columns.Skip(2)) column.NoWrap();
        // Room for the longest word of a treatment's name, which else would be cut.
        foreach (TableColumn column in overview.Columns.Skip(1)) column.PadLeft(0);
        Dictionary<string, Window> any = past.Windows.GroupBy(window => window.Treatment.Id, StringComparer.Ordinal).ToDictionary(group => group.Key, group => group.First());
        Dictionary<string, string> names = past.Sites.ToDictionary(site => site.Site.Id, site => site.Site.Name);
        foreach (BacktestSummary summary in past.Summaries)
        {
            overview.AddRow(
                Markup.Escape(names[summary.Site]),
                Markup.Escape(any[summary.Treatment].Treatment.Name),
                $"{summary.Seasons}",
                summary.OpenedUncertain > 0 ? $"{summary.Opened} (+{summary.OpenedUncertain}*)" : $"{summary.Opened}",
                Day(summary.MedianOpening),
                Day(summary.EarliestOpening),
                Day(summary.LatestOpening),
                summary.OpeningSpreadDays is { } spread ? $"± {spread:0} days" : "-",
                Day(summary.MedianClose),
                summary.MedianDaysOpen is { } open ? $"{open:0} days" : "-");
        }

        return overview;
    }

    private static void ShowRivals(PastSeasons past, IAnsiConsole console, Terminal terminal)
    {
        Table table = new Table().Border(TableBorder.Simple).Title("Other ways to find the day, beside the windows").AddColumns("Treatment", "Way", "Seasons", "After the opening", "Apart", "In the window");
        foreach (TreatmentComparison comparison in past.Comparisons)
        {
            foreach (Rival rival in Enum.GetValues<Rival>().Where(rival => rival != Rival.Window))
            {
                if (RivalAgreement.Of(comparison.Seasons, rival) is not { } agreement) continue;
                table.AddRow(
                    Markup.Escape(comparison.Treatment.Name),
                    Markup.Escape(RivalWords.WithRule(comparison, rival, past.Region.Units)),
                    $"{agreement.Seasons}",
                    Signed(agreement.MeanDaysAfterOpening),
                    $"{agreement.MeanDaysApart:0.0} days",
                    $"{agreement.InsideWindow} of {agreement.Seasons}");
            }
        }

        if (table.Rows.Count == 0) return;
        console.Write(table);
        terminal.Output.WriteLine("After the opening: in the mean of the seasons; negative is before it. None of this says who is right: only what was seen outdoors does.");
    }

    private static void ShowScores(PastSeasons past, IAnsiConsole console, Terminal terminal)
    {
        if (past.Scores.Count == 0)
        {
            terminal.Output.WriteLine("Nothing seen outdoors is known for these seasons, so nothing is scored: give dates by --observed FILE, or record sightings.");
            return;
        }

        Table table = new Table().Border(TableBorder.Simple).Title($"Scores against what was seen; a hit is within {past.WithinDays} days")
            .AddColumns("Treatment", "Way", "Seasons", "Hits", "Misses", "False", "Off by (mean)", "Late (mean)", "Better than the calendar");
        foreach (TreatmentComparison comparison in past.Comparisons)
        {
            foreach (RivalScore each in past.Scores.GetValueOrDefault(comparison.Treatment.Id, []))
            {
                table.AddRow(
                    Markup.Escape(comparison.Treatment.Name),
                    RivalWords.ForPeople(each.Rival),
                    $"{each.Score.Seasons}",
                    $"{each.Score.Hits}",
                    $"{each.Score.Misses}",
                    each.Score.LookedForInVain == 0 ? "-" : $"{each.Score.FalseOpenings} of {each.Score.LookedForInVain}",
                    $"{each.Score.MeanAbsoluteErrorDays:0.0} days{Range(each.Score.MeanAbsoluteErrorInterval)}",
                    $"{Signed(each.Score.BiasDays)}{Range(each.Score.BiasInterval)}",
                    each.AgainstCalendar is { } skill ? $"{100 * skill.Skill:0} %{Range(skill.Interval, 100)}" : "-");
            }
        }

        console.Write(table);
        int groups = past.Scores.Values.SelectMany(scores => scores).Max(each => each.Score.Groups);
        string few = groups < Bootstrap.FewGroups ? $" These are {groups} years: too few for an interval to say much." : "";
        terminal.Output.WriteLine($"In brackets: 95 % intervals from {Bootstrap.UsualDraws} draws of whole years, seed {PastSeasons.Seed}.{few}");
    }

    private static void ShowWhatIf(PastSeasons past, IAnsiConsole console, Terminal terminal)
    {
        if (past.WhatIf.Count == 0) return;
        Table table = new Table().Border(TableBorder.Simple).Title("What if").AddColumns("Treatment", "With", "Opened", "Never", "Again", "Later (mean)", "From to", "Off by (mean)", "Hits");
        Dictionary<string, Treatment> treatments = past.Comparisons.ToDictionary(each => each.Treatment.Id, each => each.Treatment);
        foreach (VariantOutcome each in past.WhatIf)
        {
            table.AddRow(
                Markup.Escape(treatments[each.Treatment].Name),
                Markup.Escape(string.Join(", ", each.Variations.Select(one => $"{one.PartInWords} {one.ValueInWords(past.Region.Units)}"))),
                $"{each.Opened} of {each.Seasons}",
                $"{each.NeverOpened}",
                $"{each.Reopenings}",
                each.MeanDaysLater is { } later ? Signed(later) : "-",
                each.DaysLaterRange is { } range ? $"{range.Least} to {range.Most} days" : "-",
                each.Score is { } score ? $"{score.MeanAbsoluteErrorDays:0.0} days" : "-",
                each.Score is { } hits ? $"{hits.Hits} of {hits.Seasons}" : "-");
        }

        console.Write(table);
        terminal.Output.WriteLine(WhatIfWords.AllElseStays);
        foreach (IGrouping<string, VariantOutcome> varied in past.WhatIf.GroupBy(each => each.Treatment, StringComparer.Ordinal))
        {
            if (varied.Select(each => WhatIfWords.OfBase(treatments[varied.Key], each.Variations, past.Region.Units)).FirstOrDefault(words => words is not null) is { } words) terminal.Output.WriteLine($"{treatments[varied.Key].Name}: {words}");
        }
    }

    /// <summary>The seasons of a site, so many treatments in a table that their dates stand on one line each.</summary>
    private static IEnumerable<Table> SeasonTables(IGrouping<string, Window> site) =>
        site.Select(window => window.Treatment.Name).Distinct(StringComparer.Ordinal).Chunk(TreatmentsBesideEachOther).Select(treatments => SeasonTable(site, treatments));

    private static Table SeasonTable(IGrouping<string, Window> site, string[] treatments)
    {
        Table table = new Table().Border(TableBorder.Simple).Title(Markup.Escape(site.Key)).AddColumn("Season").AddColumns([.. treatments.Select(Markup.Escape)]);
        foreach (IGrouping<int, Window> season in site.GroupBy(window => window.Season.Year).OrderBy(season => season.Key))
        {
            table.AddRow([$"{season.Key}", .. treatments.Select(name => season.FirstOrDefault(window => window.Treatment.Name == name) is { } window ? Span(window) : "")]);
        }

        return table;
    }

    private static string Span(Window window)
    {
        if (window.FirstOpening is not { } opening) return window.State == WindowState.Unknown || window.CouldNotBeJudged ? "not judged" : "did not open";
        string close = window.LastClosing is { } closing ? $"{Dates.Short(closing.Day)}{(closing.Because.RestsOnFallback ? "†" : "")}" : "?";
        return $"{Dates.Short(opening.Day)}{(window.MayHaveOpenedEarlier ? "*" : "")}{(opening.Because.RestsOnFallback ? "†" : "")} to {close}";
    }

    private static string Signed(double days) => string.Create(CultureInfo.InvariantCulture, $"{days:+0.0;-0.0;0.0} days");

    private static string Range(ConfidenceInterval? interval, double factor = 1) =>
        interval is { } known ? string.Create(CultureInfo.InvariantCulture, $" ({known.Low * factor:0.#} to {known.High * factor:0.#})") : "";

    private static string Day(AnnualDay? day) => day is { } known ? known.In(2024).ToString("d MMM", CultureInfo.InvariantCulture) : "-";
}
