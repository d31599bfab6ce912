using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Treatments;
using GddWatch.Agronomy.Treatments.Conditions;
using GddWatch.Agronomy.Windows;

namespace GddWatch.Agronomy.Backtesting.Rivals;

/// <summary>When other ways than the judged window would have named the day.</summary>
public static class RivalDates
{
    /// <summary>The rule on a running mean that a treatment is compared with: its own, or the one that its opening suggests; null where there is none.</summary>
    public static RunningMeanRule? RunningMeanOf(Treatment treatment)
    {
        ArgumentNullException.ThrowIfNull(treatment);
        return treatment.CompareWith.Air ?? RunningMeanRule.SuggestedBy(treatment.Opens);
    }

    /// <summary>The fixed date in a season at a site, by the site's hemisphere; null where the treatment has none.</summary>
    public static DateOnly? Calendar(Treatment treatment, Season season, Hemisphere hemisphere)
    {
        ArgumentNullException.ThrowIfNull(treatment);
        return treatment.CompareWith.Calendar is { } day ? season.Nearest(hemisphere.Place(day)) : null;
    }

    /// <summary>
    /// The first day of a season on which the running mean has passed; null where it does not, or where a day before it is not known. It may reach back before the
    /// season's start, so that a mean that is past by then names the first day.
    /// </summary>
    public static DateOnly? RunningMean(RunningMeanRule rule, SiteMetrics metrics, Season season)
    {
        ArgumentNullException.ThrowIfNull(rule);
        ArgumentNullException.ThrowIfNull(metrics);
        double[] means = metrics.AirMeans(AirValue.Mean, rule.MeanOverDays);
        int last = Math.Min(metrics.Series.IndexOf(season.Span.Last), means.Length - 1);
        // A record that begins with the season has no mean for its first days.
        int first = Math.Max(Math.Max(metrics.Series.IndexOf(season.Span.First), 0), rule.MeanOverDays - 1);
        for (int day = first; day <= last; day++)
        {
            if (double.IsNaN(means[day])) return null;
            if (rule.Passing == Passing.RisesAbove ? means[day] >= rule.Threshold.Celsius : means[day] <= rule.Threshold.Celsius) return metrics.Series.DayAt(day);
        }

        return null;
    }
}
