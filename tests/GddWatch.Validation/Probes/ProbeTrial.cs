using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Soil;
using GddWatch.Agronomy.Weather;
using GddWatch.Validation.Scoring;
using GddWatch.Validation.Weather;
using MathNet.Numerics.Distributions;

namespace GddWatch.Validation.Probes;

/// <summary>
/// Plays at every station and every tenth day that somebody has read a soil thermometer some days before, and scores the next 30 days with and
/// without the product's correction. The readings are the measured daily means.
/// </summary>
internal static class ProbeTrial
{
    private const int DepthCm = 5;
    private const int FirstStart = 400;
    private const int DaysBetweenStarts = 10;
    private const int JudgedDays = 30;
    private const int Seed = 5;

    public static IReadOnlyList<ProbeScore> Run(ProbePlan plan, SoilEstimate estimate, IReadOnlyList<MeasuredStation> stations)
    {
        Random chance = new(Seed);
        return [.. stations.Select((station, i) => AtStation(plan, estimate, station, i, chance))];
    }

    private static ProbeScore AtStation(ProbePlan plan, SoilEstimate estimate, MeasuredStation station, int index, Random chance)
    {
        ProbeScore score = new(station.IsHumid);
        double[] measured = station.MeasuredC[DepthCm];
        KnownEstimate known = new(station.Series.FirstDay, estimate.MeanC[index], estimate.DeviationC[index]);
        for (int start = FirstStart; start < station.Series.Count - JudgedDays - DaysBetweenStarts; start += DaysBetweenStarts)
        {
            if (plan.DaysBefore.Any(before => double.IsNaN(measured[start - before]))) continue;
            int from = start - plan.DaysBefore.Max();
            ProbeReading[] readings = [.. plan.DaysBefore.Select(before => Reading(station, start - before, Noise(plan, chance)))];
            DailySeries span = Cut(station.Series, from, start + JudgedDays);
            ProbedSoil corrected = ProbeCorrection.Estimate(known, span, station.LatitudeDegrees, Depth.FromCentimetres(DepthCm), readings);
            score.AddReadings(corrected.Readings);
            for (int day = start + 1; day <= start + JudgedDays; day++)
            {
                double truth = measured[day];
                score.AddDay(
                    estimate.MeanC[index][day] - truth, corrected.Columns.MeanC[day - from] - truth, corrected.Columns.DeviationC[day - from]);
            }
        }

        return score;
    }

    private static ProbeReading Reading(MeasuredStation station, int day, double noiseC) => new(
        station.Series.DayAt(day), null, Depth.FromCentimetres(DepthCm), Temperature.FromCelsius(station.MeasuredC[DepthCm][day] + noiseC));

    private static double Noise(ProbePlan plan, Random chance) => plan.NoiseC > 0 ? Normal.Sample(chance, 0, plan.NoiseC) : 0;

    private static DailySeries Cut(DailySeries series, int from, int until)
    {
        DailySeriesBuilder builder = new();
        for (int day = from; day <= until; day++)
        {
            builder.Add(new DailyRecord { Day = series.DayAt(day), MinimumAirC = Known(series.MinimumAirC[day]), MaximumAirC = Known(series.MaximumAirC[day]) });
        }

        return builder.Build() ?? throw new InvalidOperationException($"No day lies between {from} and {until}.");
    }

    private static double? Known(double value) => double.IsNaN(value) ? null : value;
}
