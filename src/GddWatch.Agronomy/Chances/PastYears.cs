using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Weather;

namespace GddWatch.Agronomy.Chances;

/// <summary>The past years of a site, each of which is one future.</summary>
/// <param name="Series">The weather that holds them.</param>
/// <param name="Day">The day from which is looked ahead.</param>
/// <param name="Anchors">The same day of the year in each past year.</param>
internal sealed record PastYears(DailySeries Series, DateOnly Day, IReadOnlyList<DateOnly> Anchors)
{
    /// <summary>How many years are looked at, the latest ones. Source: the standard normal of 30 years (SEEN, science reference 5.1).</summary>
    public const int LatestYears = 30;

    /// <summary>A year whose days lie nearer than so many to the day is the season itself [days].</summary>
    private const int OwnSeasonDays = 300;

    /// <summary>
    /// The past years for a day. Live, the series ends on that day and so none of them is later; in a hindcast it may hold the years after, and lacks the season itself.
    /// </summary>
    public static PastYears Of(DailySeries series, DateOnly day)
    {
        var anchors = new List<DateOnly>();
        var annual = AnnualDay.Of(day);
        for (int year = series.LastDay.Year; year >= series.FirstDay.Year && anchors.Count < LatestYears; year--)
        {
            DateOnly anchor = annual.In(year);
            if (Math.Abs(anchor.DayNumber - day.DayNumber) < OwnSeasonDays || anchor < series.FirstDay) continue;
            anchors.Add(anchor);
        }

        return new PastYears(series, day, anchors);
    }

    /// <summary>The course of a variable over these years.</summary>
    public YearlyCourse CourseOf(ReadOnlySpan<double> known, DateOnly knownFirst, ReadOnlySpan<double> past, int daysAhead) =>
        YearlyCourse.Of(known, knownFirst, past, Series.FirstDay, Day, Anchors, daysAhead);
}
