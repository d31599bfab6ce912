using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Treatments;
using MathNet.Numerics.Statistics;

namespace GddWatch.Agronomy.Windows;

/// <summary>When a window has usually opened in earlier seasons at the same site.</summary>
public static class UsualOpening
{
    /// <summary>
    /// The median opening of the earlier seasons that opened on a day that is certain, placed in a season; not known where there are fewer than
    /// <see cref="SiteClimate.SeasonsNeeded"/> of them.
    /// <para>Source: quantile of type 8, Hyndman &amp; Fan 1996, Am. Stat. 50:361-365 (SEEN).</para>
    /// </summary>
    public static UsualDate In(Season season, Treatment treatment, SiteMetrics metrics)
    {
        ArgumentNullException.ThrowIfNull(treatment);
        ArgumentNullException.ThrowIfNull(metrics);
        var offsets = new List<double>();
        for (int year = metrics.Series.FirstDay.Year; year < season.Year; year++)
        {
            Season earlier = treatment.Season.BeginningIn(year, metrics.Site.Hemisphere);
            if (earlier.Span.First < metrics.Series.FirstDay) continue;
            Window window = WindowJudge.JudgeSeason(treatment, metrics, earlier, earlier.Span.Last);
            if (!window.MayHaveOpenedEarlier && window.FirstOpening is { } opening) offsets.Add(opening.Day.DayNumber - earlier.Span.First.DayNumber);
        }

        if (offsets.Count < SiteClimate.SeasonsNeeded) return new UsualDate(null, false, $"it opened in {offsets.Count} earlier seasons, and {SiteClimate.SeasonsNeeded} are needed");
        return new UsualDate(season.Span.First.AddDays((int)Math.Round(offsets.QuantileCustom(0.5, QuantileDefinition.R8))), false, $"median of {offsets.Count} earlier seasons");
    }
}
