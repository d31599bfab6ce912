using GddWatch.Validation.Scoring;
using GddWatch.Validation.Weather;

namespace GddWatch.Validation.Fitting;

/// <summary>
/// Gives a model an offset and a factor of the data's own, so that rivals are compared without the advantage, or the handicap, of where their constants
/// come from: measured = a + b · estimate by least squares over all days of the other humid stations, applied to the station left out.
/// </summary>
internal static class StraightLineHeldOut
{
    public static SoilEstimate Of(SoilEstimate estimate, IReadOnlyList<MeasuredStation> stations)
    {
        Moments[] own = [.. stations.Select((station, index) => MomentsOf(estimate, station, index))];
        SoilEstimate held = SoilEstimate.Empty(stations, estimate.DepthCm);
        for (int left = 0; left < stations.Count; left++)
        {
            Moments others = default;
            for (int i = 0; i < stations.Count; i++)
            {
                if (i != left && stations[i].IsHumid) others = others.Plus(own[i]);
            }

            (double offsetC, double factor) = others.Line();
            for (int day = 0; day < held.MeanC[left].Length; day++)
            {
                held.MeanC[left][day] = offsetC + factor * estimate.MeanC[left][day];
                held.DeviationC[left][day] = double.NaN;
            }
        }

        return held;
    }

    private static Moments MomentsOf(SoilEstimate estimate, MeasuredStation station, int index)
    {
        Moments sums = default;
        if (!station.MeasuredC.TryGetValue(estimate.DepthCm, out double[]? measured)) return sums;
        for (int day = 0; day < measured.Length; day++)
        {
            double x = estimate.MeanC[index][day], y = measured[day];
            if (!double.IsNaN(x + y)) sums = sums.Plus(new Moments(1, x, y, x * x, x * y));
        }

        return sums;
    }

    private readonly record struct Moments(double N, double X, double Y, double XX, double XY)
    {
        public Moments Plus(Moments other) => new(N + other.N, X + other.X, Y + other.Y, XX + other.XX, XY + other.XY);

        public (double Offset, double Factor) Line()
        {
            double factor = (N * XY - X * Y) / (N * XX - X * X);
            return ((Y - factor * X) / N, factor);
        }
    }
}
