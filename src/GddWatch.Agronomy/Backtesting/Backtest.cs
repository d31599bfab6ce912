using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Treatments;
using GddWatch.Agronomy.Windows;

namespace GddWatch.Agronomy.Backtesting;

/// <summary>Past seasons judged by the same code as the present one.</summary>
public static class Backtest
{
    /// <summary>
    /// Every season of every treatment that the site's weather holds from its beginning to its end. Judging uses no day after the one judged, so each window
    /// is what the service would have told then, filled holes included. Their reasons are made when they are read, from the same weather.
    /// </summary>
    public static IReadOnlyList<Window> Seasons(IReadOnlyList<Treatment> treatments, SiteMetrics metrics)
    {
        var windows = new List<Window>();
        foreach (Treatment treatment in treatments.Where(treatment => treatment.IsFor(metrics.Site)))
        {
            for (int year = metrics.Series.FirstDay.Year; year <= metrics.Series.LastDay.Year; year++)
            {
                Season season = treatment.Season.BeginningIn(year, metrics.Site.Hemisphere);
                bool held = season.Span.First.AddDays(WindowJudge.LateStartDays) >= metrics.Series.FirstDay && season.Span.Last <= metrics.Series.LastDay;
                if (held) windows.Add(WindowJudge.JudgeSeason(treatment, metrics, season, season.Span.Last));
            }
        }

        return windows;
    }
}
