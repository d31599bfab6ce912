using GddWatch.Agronomy.Weather;

namespace GddWatch.Feeds.Gathering;

/// <summary>Finds two feeds of a site that tell different weather of late.</summary>
internal static class FeedsApart
{
    /// <summary>From how far apart on two feeds of one place contradict each other on a day [°C]; two stations near by, and a station and a grid, mostly stay within it (common practice).</summary>
    private const double LimitC = 5;

    /// <summary>How many of the latest common days are looked at [days].</summary>
    private const int LatestDays = 14;

    /// <summary>On how many of them feeds must contradict each other before the operator hears of it [days]: one cold night in a hollow is no news.</summary>
    private const int ContradictedDays = 3;

    /// <summary>Compares the latest days that both know; null where they agree.</summary>
    public static FeedRemark? Between(string better, DailySeries betterSeries, string other, DailySeries otherSeries)
    {
        int common = 0;
        int contradicted = 0;
        double sumC = 0;
        DateOnly last = betterSeries.LastDay < otherSeries.LastDay ? betterSeries.LastDay : otherSeries.LastDay;
        for (DateOnly day = last; common < LatestDays && betterSeries.Holds(day) && otherSeries.Holds(day); day = day.AddDays(-1))
        {
            int mine = betterSeries.IndexOf(day), theirs = otherSeries.IndexOf(day);
            double lowC = Math.Abs(betterSeries.MinimumAirC[mine] - otherSeries.MinimumAirC[theirs]);
            double highC = Math.Abs(betterSeries.MaximumAirC[mine] - otherSeries.MaximumAirC[theirs]);
            if (double.IsNaN(lowC + highC)) continue;
            common++;
            sumC += (lowC + highC) / 2;
            if (Math.Max(lowC, highC) > LimitC) contradicted++;
        }

        if (contradicted < ContradictedDays) return null;
        return new FeedRemark(
            $"apart {better} {other}",
            FormattableString.Invariant($"{better} and {other} are more than {LimitC:0} °C apart on {contradicted} of the last {common} days that both know ({sumC / common:0.0} °C on average). The first is used. Look whether both are of this place and count their days alike."));
    }
}
