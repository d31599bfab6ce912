using GddWatch.Validation.Weather;

namespace GddWatch.Validation.Scoring;

/// <summary>How far an estimate is from the measurement. Differences are estimate − measured.</summary>
/// <param name="Days">Station-days compared.</param>
/// <param name="PooledRmseC">Root of the mean square difference over all station-days [°C].</param>
/// <param name="PooledBiasC">Mean difference over all station-days [°C].</param>
/// <param name="StationRmseC">Mean over the stations of each station's root mean square difference [°C].</param>
/// <param name="StationBiasC">Mean over the stations of each station's mean difference [°C].</param>
/// <param name="Coverage">Share of station-days on which the measurement lies in the stated 80 % range; NaN where a model states none.</param>
internal sealed record Score(long Days, double PooledRmseC, double PooledBiasC, double StationRmseC, double StationBiasC, double Coverage)
{
    public static Score Of(SoilEstimate estimate, IReadOnlyList<MeasuredStation> stations, StationGroup group, PartOfYear part)
    {
        Sums pooled = default;
        double rmse = 0, bias = 0;
        int counted = 0;
        for (int i = 0; i < stations.Count; i++)
        {
            if (!group.Holds(stations[i])) continue;
            Sums own = OfStation(estimate, stations[i], i, part);
            if (own.Days == 0) continue;
            pooled = pooled.Plus(own);
            rmse += Math.Sqrt(own.Squares / own.Days);
            bias += own.Differences / own.Days;
            counted++;
        }

        double n = pooled.Days;
        return new Score(pooled.Days, Math.Sqrt(pooled.Squares / n), pooled.Differences / n, rmse / counted, bias / counted, pooled.Stated > 0 ? pooled.Held / (double)pooled.Stated : double.NaN);
    }

    private static Sums OfStation(SoilEstimate estimate, MeasuredStation station, int index, PartOfYear part)
    {
        Sums sums = default;
        if (!station.MeasuredC.TryGetValue(estimate.DepthCm, out double[]? measured)) return sums;
        double[] mean = estimate.MeanC[index], deviation = estimate.DeviationC[index];
        bool[] counts = MonthsCounted(part);
        for (int day = 0; day < measured.Length; day++)
        {
            double difference = mean[day] - measured[day];
            if (double.IsNaN(difference) || !counts[station.Series.DayAt(day).Month]) continue;
            sums.Days++;
            sums.Differences += difference;
            sums.Squares += difference * difference;
            if (double.IsNaN(deviation[day])) continue;
            sums.Stated++;
            if (Math.Abs(difference) <= SoilEstimate.EightyPercent * deviation[day]) sums.Held++;
        }

        return sums;
    }

    private static bool[] MonthsCounted(PartOfYear part)
    {
        var counts = new bool[13];
        foreach (int month in part.Months) counts[month] = true;
        return counts;
    }

    private record struct Sums(long Days, double Differences, double Squares, long Stated, long Held)
    {
        public readonly Sums Plus(Sums other) =>
            new(Days + other.Days, Differences + other.Differences, Squares + other.Squares, Stated + other.Stated, Held + other.Held);
    }
}
