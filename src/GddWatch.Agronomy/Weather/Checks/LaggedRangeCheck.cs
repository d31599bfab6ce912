using GddWatch.Agronomy.Treatments;

namespace GddWatch.Agronomy.Weather.Checks;

/// <summary>
/// Doubts a maximum far above the minima around it, and a minimum far below the maxima around it.
/// <para>Tx(D) − max(Tn(D−1), Tn(D), Tn(D+1)) ≥ <see cref="LeastRangeC"/>, or min(Tx(D−1), Tx(D), Tx(D+1)) − Tn(D) ≥ <see cref="LeastRangeC"/>.
/// Minimum and maximum of day D are both doubted; those of the days beside it are not, though the publication does so, since they agree with each other.</para>
/// <para>On day D the days D−1 and D alone decide, known from D; it is cleared on D+1 where that day lies nearer, and stays where it confirms the range or is
/// missing. Where a value of D−1 or D is missing there is no doubt.</para>
/// <para>Source: Durre et al. 2010, J. Appl. Meteorol. Climatol. 49:1615-1633; threshold SEEN in an open implementation.</para>
/// </summary>
internal sealed class LaggedRangeCheck(CheckedValues values)
{
    /// <summary>From which range on over three days the values are doubted [°C].</summary>
    public const double LeastRangeC = 40.0;

    // Differences of tenths of a degree are not exact in binary.
    private const double RoundingC = 1e-9;

    /// <summary>
    /// Clears or leaves yesterday's doubts and judges today, and yesterday again where the check before this one cleared a value of it. Tells whether a value of
    /// yesterday was cleared, here or before.
    /// </summary>
    public bool Judge(int today, bool yesterdayWasCleared)
    {
        bool anyCleared = false;
        bool isDoubted = values.IsDoubted(QualityCheck.LaggedRange, WeatherVariable.MinimumAirC, today - 1) || values.IsDoubted(QualityCheck.LaggedRange, WeatherVariable.MaximumAirC, today - 1);
        if (isDoubted && !Suspicion(today - 1, today).Exists)
        {
            foreach (WeatherVariable variable in CheckedValues.Variables)
            {
                if (values.IsDoubted(QualityCheck.LaggedRange, variable, today - 1)) values.Clear(QualityCheck.LaggedRange, variable, today - 1, today);
            }

            anyCleared = true;
        }

        if (yesterdayWasCleared) JudgeDay(today - 1, today);
        JudgeDay(today, today);
        return anyCleared || yesterdayWasCleared;
    }

    private void JudgeDay(int index, int today)
    {
        (bool exists, bool ofMaximum, double rangeC) = Suspicion(index, today);
        if (!exists) return;
        DateOnly day = values.DayAt(index);
        double minimumC = values.Measured(WeatherVariable.MinimumAirC, index);
        double maximumC = values.Measured(WeatherVariable.MaximumAirC, index);
        string what = ofMaximum
            ? $"The maximum, {DoubtWords.Degrees(maximumC)}, is {DoubtWords.Difference(rangeC)} above the warmest minimum of the days around it"
            : $"The minimum, {DoubtWords.Degrees(minimumC)}, is {DoubtWords.Difference(rangeC)} below the coldest maximum of the days around it";
        foreach (WeatherVariable variable in CheckedValues.Variables) values.Doubt(QualityCheck.LaggedRange, variable, index, today, $"{what} on {Wording.Day(day)}.");
    }

    private (bool Exists, bool OfMaximum, double RangeC) Suspicion(int index, int today)
    {
        double minimumC = values.SeenBy(QualityCheck.LaggedRange, WeatherVariable.MinimumAirC, index);
        double maximumC = values.SeenBy(QualityCheck.LaggedRange, WeatherVariable.MaximumAirC, index);
        // The days around make the range no wider than the day's own, and nearly all days end here.
        if (!(maximumC - minimumC >= LeastRangeC - RoundingC)) return (false, false, 0);
        double warmestMinimumC = Around(WeatherVariable.MinimumAirC, index, today, Math.Max);
        double coldestMaximumC = Around(WeatherVariable.MaximumAirC, index, today, Math.Min);
        double aboveC = maximumC - warmestMinimumC;
        double belowC = coldestMaximumC - minimumC;
        if (aboveC >= LeastRangeC - RoundingC) return (true, true, aboveC);
        return belowC >= LeastRangeC - RoundingC ? (true, false, belowC) : (false, false, 0);
    }

    // The day before and the day itself are needed; the day after counts where it is known today.
    private double Around(WeatherVariable variable, int index, int today, Func<double, double, double> extreme)
    {
        double aroundC = extreme(values.SeenBy(QualityCheck.LaggedRange, variable, index - 1), values.SeenBy(QualityCheck.LaggedRange, variable, index));
        double afterC = index < today ? values.SeenBy(QualityCheck.LaggedRange, variable, index + 1) : double.NaN;
        return double.IsNaN(afterC) ? aroundC : extreme(aroundC, afterC);
    }
}
