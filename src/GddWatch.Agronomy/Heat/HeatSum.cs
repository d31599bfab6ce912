using System.Globalization;
using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Weather;

namespace GddWatch.Agronomy.Heat;

/// <summary>Accumulated degree-days, year after year from the start date.</summary>
public static class HeatSum
{
    /// <summary>The sums of <see cref="Over"/> alone.</summary>
    /// <inheritdoc cref="Over"/>
    /// <returns>The sum at the end of each day of the series [°C-days].</returns>
    public static double[] Column(DailySeries series, HeatSumDefinition definition, Hemisphere hemisphere, ReadOnlySpan<double> soilMeanC) =>
        Over(series, definition, hemisphere, soilMeanC).CelsiusDays;

    /// <summary>
    /// Gives the heat sum at the end of each day: S(d) = S(d−1) + DD(d), zero before the start date's own day is added.
    /// <para>With a biofix condition the sum stands at zero from the start date until the condition is met, and that day is the first added.</para>
    /// <para>A soil sum takes each day as one without range, at the soil's daily mean; all methods then agree.</para>
    /// <para>A day before the series' first start date has no sum (NaN), and after a missing day the sum is NaN until the next start date: a missing day is
    /// not a zero (<see cref="OverComplete"/> refuses such a series instead). So it is from the first day on which a biofix's mean is not known, since the condition may have been met there; a series must begin that
    /// many days before the start date. A double method takes a missing next minimum from the day itself.</para>
    /// <para>Accumulated in double precision and never rounded. Uses no later day, so cutting the series changes nothing before the cut but the last day of a
    /// double method, which is provisional and said to be.</para>
    /// </summary>
    /// <param name="series">The air temperatures [°C].</param>
    /// <param name="definition">What is summed and how.</param>
    /// <param name="hemisphere">Where the start date lies in the year.</param>
    /// <param name="soilMeanC">Daily mean soil temperature [°C] at the definition's depth, where the soil is summed; else empty.</param>
    /// <returns>The sum at the end of each day of the series, the days it counts from, and whether the last is provisional.</returns>
    /// <exception cref="ArgumentException">The soil is summed and its column has another length than the series.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A day's minimum lies above its maximum, a temperature is infinite, or the upper threshold is not above the
    /// base.</exception>
    public static HeatSums Over(DailySeries series, HeatSumDefinition definition, Hemisphere hemisphere, ReadOnlySpan<double> soilMeanC)
    {
        ArgumentNullException.ThrowIfNull(series);
        ArgumentNullException.ThrowIfNull(definition);
        bool soil = definition.SoilDepth is not null;
        if (soil && soilMeanC.Length != series.Count)
        {
            throw new ArgumentException($"The soil column has {soilMeanC.Length} days and the series {series.Count}; they must be the same days.", nameof(soilMeanC));
        }

        ReadOnlySpan<double> minimum = soil ? soilMeanC : series.MinimumAirC;
        ReadOnlySpan<double> maximum = soil ? soilMeanC : series.MaximumAirC;
        var sums = new double[series.Count];
        FillDays(series, definition, minimum, maximum, sums);
        List<HeatSumYear> years = HeatSumYear.Of(series, definition, hemisphere);
        foreach (HeatSumYear year in years)
        {
            // From a day that may or may not have been the biofix, no sum of this year is known.
            if (year.IsHidden) sums[year.CountsFrom] = double.NaN;
        }

        Accumulate(sums, years);
        bool provisional = !soil
            && DailyHeat.ReadsNextMinimum(definition.Method)
            && years is [.., { } last]
            && last.CountsFrom < sums.Length
            && !double.IsNaN(sums[^1]);
        return new HeatSums(sums, years.ConvertAll(year => year.ToSeason(series)), provisional);
    }

    /// <summary>
    /// Gives the sums of <see cref="Over"/> for a series that must have no hole: for who would rather hear of a missing day than get NaN from it on.
    /// <para>Every day of the series must know what is summed: both air temperatures, or the soil's mean in a soil sum (and the air too where a biofix is
    /// judged by it).</para>
    /// </summary>
    /// <inheritdoc cref="Over"/>
    /// <exception cref="ArgumentException">The soil is summed and its column has another length than the series.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A day of the series is missing (NaN); the message names the first. Or as for
    /// <see cref="Over"/>.</exception>
    public static HeatSums OverComplete(DailySeries series, HeatSumDefinition definition, Hemisphere hemisphere, ReadOnlySpan<double> soilMeanC)
    {
        HeatSums sums = Over(series, definition, hemisphere, soilMeanC);
        if (definition.SoilDepth is not null) RefuseHole(series, "soil temperature", soilMeanC);
        if (definition.SoilDepth is not null && definition.Biofix is null) return sums;
        RefuseHole(series, "minimum temperature", series.MinimumAirC);
        RefuseHole(series, "maximum temperature", series.MaximumAirC);
        return sums;
    }

    /// <summary>
    /// Gives the heat sum at the end of each day of two columns, as <see cref="Over"/> does, without a calendar and without taking memory.
    /// <para>NaN before the first start, and from a missing day (NaN in either column) until the next start.</para>
    /// </summary>
    /// <param name="method">How a day's heat is reckoned.</param>
    /// <param name="cutoff">What happens above the upper threshold.</param>
    /// <param name="minimumC">Lowest temperature of each day [°C].</param>
    /// <param name="maximumC">Highest temperature of each day [°C].</param>
    /// <param name="baseC">Base [°C].</param>
    /// <param name="upperC">Upper threshold [°C]; null for none.</param>
    /// <param name="starts">The places of the days from which the sum starts from zero, ascending.</param>
    /// <param name="sums">Receives the sum at the end of each day [°C-days].</param>
    /// <exception cref="ArgumentException">The columns differ in length, or the starts do not ascend within them.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A day's minimum lies above its maximum, a temperature is infinite, or the upper threshold is not above the
    /// base.</exception>
    public static void Accumulate(
        DegreeDayMethod method,
        DegreeDayCutoff cutoff,
        ReadOnlySpan<double> minimumC,
        ReadOnlySpan<double> maximumC,
        double baseC,
        double? upperC,
        ReadOnlySpan<int> starts,
        Span<double> sums)
    {
        if (minimumC.Length != sums.Length || maximumC.Length != sums.Length)
        {
            throw new ArgumentException(
                $"The columns have {minimumC.Length} minima, {maximumC.Length} maxima and room for {sums.Length} sums; they must be the same days.", nameof(sums));
        }

        CheckStarts(starts, sums.Length);
        double upper = HeatDemand.Thresholds(baseC, upperC);
        int impossible = DailyHeatColumn.Fill(method, cutoff, minimumC, maximumC, baseC, upper, sums);
        if (impossible >= 0) HeatDemand.Extremes(minimumC[impossible], maximumC[impossible], $" at place {impossible} of the column");
        sums[..(starts.IsEmpty ? sums.Length : starts[0])].Fill(double.NaN);
        for (int i = 0; i < starts.Length; i++) RunningSum(sums[starts[i]..(i + 1 < starts.Length ? starts[i + 1] : sums.Length)]);
    }

    private static void RefuseHole(DailySeries series, string name, ReadOnlySpan<double> column)
    {
        int missing = 0;
        int first = -1;
        for (int i = 0; i < column.Length; i++)
        {
            if (!double.IsNaN(column[i])) continue;
            if (first < 0) first = i;
            missing++;
        }

        if (column.IsEmpty) (first, missing) = (0, series.Count);
        if (missing > 0) throw HeatDemand.Hole(name, series.DayAt(first), missing);
    }

    private static void FillDays(
        DailySeries series, HeatSumDefinition definition, ReadOnlySpan<double> minimum, ReadOnlySpan<double> maximum, double[] sums)
    {
        double baseC = definition.Base.Celsius;
        double upperC = HeatDemand.Thresholds(baseC, definition.Upper?.Celsius);

        // Without a range both halves of a double method are the same half, and tomorrow's soil is not tonight's minimum.
        DegreeDayMethod method = definition.SoilDepth is null ? definition.Method : DegreeDayMethod.SimpleAverage;
        int impossible = DailyHeatColumn.Fill(method, definition.Cutoff, minimum, maximum, baseC, upperC, sums);
        if (impossible < 0) return;
        string day = series.DayAt(impossible).ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
        HeatDemand.Extremes(minimum[impossible], maximum[impossible], $" of {day}");
    }

    private static void Accumulate(Span<double> sums, List<HeatSumYear> years)
    {
        sums[..(years is [{ } first, ..] ? first.ZeroFrom : sums.Length)].Fill(double.NaN);
        foreach (HeatSumYear year in years)
        {
            sums[year.ZeroFrom..year.CountsFrom].Clear();
            RunningSum(sums[year.CountsFrom..year.End]);
        }
    }

    private static void RunningSum(Span<double> days)
    {
        double sum = 0;
        for (int i = 0; i < days.Length; i++)
        {
            sum += days[i];
            days[i] = sum;
        }
    }

    private static void CheckStarts(ReadOnlySpan<int> starts, int days)
    {
        int before = -1;
        foreach (int start in starts)
        {
            if (start <= before || start >= days)
            {
                throw new ArgumentException($"A start at place {start} after one at {before} was given; starts must ascend from 0 to {days - 1}.", nameof(starts));
            }

            before = start;
        }
    }
}
