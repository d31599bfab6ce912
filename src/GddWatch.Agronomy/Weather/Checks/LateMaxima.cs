namespace GddWatch.Agronomy.Weather.Checks;

/// <summary>
/// Tells from a place nearby that a station books each day's maximum on the day after, as those do that are read in the morning and say nothing of it.
/// </summary>
/// <param name="Days">How many days were compared [days].</param>
/// <param name="SameDay">How well the changes of the maxima go together on the same day (correlation).</param>
/// <param name="DayBefore">How well they go with the other place's changes of the day before (correlation).</param>
public sealed record LateMaxima(int Days, double SameDay, double DayBefore)
{
    /// <summary>How many of the latest days are looked at: two years [days].</summary>
    public const int LatestDays = 731;

    /// <summary>How many of them both places must know, each with the day before [days].</summary>
    public const int LeastDays = 120;

    /// <summary>How well the changes must go with those of the day before (correlation).</summary>
    public const double LeastDayBefore = 0.5;

    /// <summary>By how much better than with those of the same day (difference of correlations).</summary>
    public const double LeastAdvantage = 0.3;

    /// <summary>By how much that advantage must exceed the one of the minima (difference of differences of correlations).</summary>
    public const double LeastBeyondMinima = 0.2;

    /// <summary>
    /// Compares the changes of the maximum from day to day, d(t) = x(t) − x(t−1), which hold no season: r₀ is the correlation of the site's d(t) with the other
    /// place's d(t), r₁ that with its d(t−1).
    /// <para>Late where r₁ ≥ <see cref="LeastDayBefore"/> and r₁ − r₀ ≥ <see cref="LeastAdvantage"/>, and r₁ − r₀ exceeds that of the minima by
    /// <see cref="LeastBeyondMinima"/>: a front that takes a day from place to place delays both alike, a reading in the morning the minima by a part. Null where it is not late, or where fewer than <see cref="LeastDays"/> of the latest <see cref="LatestDays"/> common days can be compared.</para>
    /// <para>Source: that stations read in the morning book yesterday's maximum under today is common practice of co-operative stations; that shifting a maximum by a day
    /// is found by comparing lags with neighbours: Reek, Doty and Owen 1992, A deterministic approach to the validation of historical daily temperature and precipitation
    /// data, Bull. Amer. Meteor. Soc. 73:753-762 (MEMORY, the idea alone). The limits are fitted: of all ordered pairs of the 40 humid stations of the US Climate Reference Network
    /// (read at midnight) within 300 km none is called late, and the co-operative station Reidsville is against the one that lies within 300 km (each year 2010 to 2015: maxima r₁ 0.70 to 0.83, r₀ −0.09 to 0.07; minima 0.52 to 0.68 and 0.21 to 0.37).</para>
    /// </summary>
    /// <param name="series">The site's weather.</param>
    /// <param name="other">That of a place within some 300 km, or of another feed of the site, which is read at midnight.</param>
    public static LateMaxima? Of(DailySeries series, DailySeries other)
    {
        ArgumentNullException.ThrowIfNull(series);
        ArgumentNullException.ThrowIfNull(other);
        (PairedMoments sameDay, PairedMoments dayBefore) = Lags(series, other, WeatherVariable.MaximumAirC);
        double advantage = dayBefore.Correlation - sameDay.Correlation;
        if (sameDay.Count < LeastDays || !(dayBefore.Correlation >= LeastDayBefore) || !(advantage >= LeastAdvantage)) return null;
        (PairedMoments lowSameDay, PairedMoments lowDayBefore) = Lags(series, other, WeatherVariable.MinimumAirC);
        double advantageOfMinima = lowDayBefore.Correlation - lowSameDay.Correlation;
        return advantage - advantageOfMinima >= LeastBeyondMinima ? new LateMaxima(sameDay.Count, sameDay.Correlation, dayBefore.Correlation) : null;
    }

    private static (PairedMoments SameDay, PairedMoments DayBefore) Lags(DailySeries series, DailySeries other, WeatherVariable variable)
    {
        PairedMoments sameDay = new();
        PairedMoments dayBefore = new();
        DateOnly last = series.LastDay < other.LastDay ? series.LastDay : other.LastDay;
        int here = series.IndexOf(last), there = other.IndexOf(last);
        for (int back = 0; back < LatestDays; back++)
        {
            double own = Change(series, variable, here - back);
            double same = Change(other, variable, there - back);
            double before = Change(other, variable, there - back - 1);
            // The same days for both lags, else they could not be compared.
            if (!double.IsFinite(own + same + before)) continue;
            sameDay.Add(own, same);
            dayBefore.Add(own, before);
        }

        return (sameDay, dayBefore);
    }

    private static double Change(DailySeries series, WeatherVariable variable, int index)
    {
        ReadOnlySpan<double> column = series.Column(variable);
        return index >= 1 && index < column.Length ? column[index] - column[index - 1] : double.NaN;
    }
}
