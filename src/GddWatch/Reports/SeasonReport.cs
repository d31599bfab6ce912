using GddWatch.Agronomy.Backtesting;
using GddWatch.Agronomy.Treatments;
using GddWatch.Commands.Backtesting;

namespace GddWatch.Reports;

/// <summary>The report on past seasons: one page with all it needs in it.</summary>
internal static class SeasonReport
{
    /// <summary>The most sites that one report takes.</summary>
    public const int MostSites = 40;

    /// <summary>Of how many sites the last year is shown.</summary>
    public const int MostSitesWithYear = 12;

    /// <summary>How many charts it draws, about.</summary>
    public static int CountPictures(PastSeasons past) =>
        past.Comparisons.Count * 2 + past.WhatIf.Select(each => each.Treatment).Distinct().Count() + Math.Min(past.Sites.Count, MostSitesWithYear) * 2;

    /// <summary>The page.</summary>
    /// <param name="past">The past seasons.</param>
    /// <param name="done">Called after each chart.</param>
    /// <param name="stop">Stops the work.</param>
    public static string Page(PastSeasons past, Action done, CancellationToken stop)
    {
        var drawing = new ChartDrawing(done, stop);
        int first = past.Windows.Min(window => window.Season.Year), last = past.Windows.Max(window => window.Season.Year);
        return ReportTemplate.Render(new ReportView
        {
            Title = $"Past seasons of lawn tasks: {past.Region.Name}",
            Region = past.Region.Name,
            Period = $"{Wording.List([.. past.Sites.Take(6).Select(site => site.Site.Name)])}{(past.Sites.Count > 6 ? $" and {past.Sites.Count - 6} more sites" : "")}; seasons {first} to {last}",
            Remark = past.Region.Remark,
            Introduction =
            [
                "When would each task's window have opened and closed in past years? Each day of each season was judged by the weather up to that day alone, by the same rules that run today. What is shown is what people would have been told.",
                past.Scores.Count > 0
                    ? $"For some tasks it is known what was seen outdoors. There, windows and dates are scored against it; a hit lies within {Wording.Days(past.WithinDays)}."
                    : "Nothing seen outdoors is known for these seasons. The report shows how the windows differ from year to year and from fixed dates; it cannot say which of them was right.",
            ],
            Treatments = [.. past.Comparisons.Select(comparison => new TreatmentPart(past, comparison, drawing).View())],
            Sites = [.. past.Sites.Where(site => site.Soil is not null || site.HeatSum is not null).Take(MostSitesWithYear).Select(site => new SitePart(site, past.Region.Units, drawing).View())],
            Words = Words(past),
            Cautions =
            [
                "This is about timing, not a prescription for a lawn. The product's label is the law; local rules, licences and watering rules come first.",
                "Soil temperature is estimated from the weather unless a site says that it is measured. A window that was right in past years can be wrong in the next one: look at the lawn.",
            ],
        });
    }

    private static WordView[] Words(PastSeasons past) =>
    [
        new("Opening, close", "The first day of a season on which the rule was met, and the last day on which the window was shut after it. Days in between on which it waited are not counted as open."),
        new("Spread", "The standard deviation of the opening dates between seasons: about two of three seasons lie within it on either side of the mean."),
        new("Eight of ten seasons", "From the date before which one in ten openings lay to the one after which one in ten lay; a quantile of type 8 after Hyndman and Fan (1996)."),
        new("The date on the calendar", "The fixed date that people go by, as it stands in the configuration. At sites south of the equator it is half a year later."),
        new("The best fixed date", "The median of the other years: the best that a date on the calendar could have done without knowing the year. The year itself is left out at every site."),
        new("Rule of thumb", "The first day of the season on which a running mean of air temperature has passed a value, with no regard to anything else."),
        new("Off by", "The days between a date and what was seen, whichever came first, in the mean. A window that never opened counts as opening on the day after its season."),
        new("Better than the calendar", "By how much smaller that error is than the calendar date's, in percent of it: 100 % is perfect, 0 % no better, less is worse."),
        new("False", "It opened in a season in which somebody looked for what should follow and it did not come."),
        new("Intervals in brackets", $"With 95 % confidence the figure lies between the two, as far as these seasons tell: whole years were drawn again {Bootstrap.UsualDraws} times (percentile bootstrap, seed {PastSeasons.Seed}). With fewer than {Bootstrap.FewGroups} years it says little."),
        new("Heat", past.Region.Units == Agronomy.Quantities.ReadersUnits.UnitedStates
            ? "Degree-days: each day's mean air temperature above 50 °F, added up from the year's start. A threshold holds only for the base and the method that it was made with."
            : "Degree-days: each day's mean air temperature above 10 °C, added up from the year's start. A threshold holds only for the base and the method that it was made with."),
    ];
}
