using MathNet.Numerics.Statistics;

namespace GddWatch.Validation.Dates;

/// <summary>How many days dates lie from the measured ones; differences are date − measured date.</summary>
/// <param name="Seasons">Station-seasons compared.</param>
/// <param name="MeanAbsolute">[days]</param>
/// <param name="MedianAbsolute">[days]</param>
/// <param name="MeanSigned">[days], positive late.</param>
/// <param name="WithinWeek">Share within 7 days either way.</param>
internal sealed record DateErrors(int Seasons, double MeanAbsolute, double MedianAbsolute, double MeanSigned, double WithinWeek)
{
    public static DateErrors Of(IReadOnlyList<double> differences)
    {
        if (differences.Count == 0) return new DateErrors(0, double.NaN, double.NaN, double.NaN, double.NaN);
        double[] absolute = [.. differences.Select(Math.Abs)];
        return new DateErrors(
            absolute.Length, absolute.Average(), absolute.Median(), differences.Average(), absolute.Count(days => days <= 7) / (double)absolute.Length);
    }
}
