using MathNet.Numerics.LinearAlgebra;

namespace GddWatch.Agronomy.Chances;

/// <summary>
/// The forecast days of a temperature in each future: x + P (P + R)⁻¹ (f − e − x) with x the future's days without the forecast, f the forecast, e the future's own draw of the forecast's error [°C]; P the covariance
/// of x and R that of the error, day by day [°C²]. So a forecast counts as much as it is surer than what is known without it, and what it says of one day is held against the days beside it; one that is
/// certain is taken as it is.
/// <para>P is made of the variances of x over the futures and one correlation ρ of following days: s(i)·s(j)·ρ^|i − j|. R likewise of the error's deviations and links (<see cref="ForecastErrors.Link"/>).
/// Weighing the days together instead of each by itself raised the skill a fortnight ahead, with a made-up forecast, from 0.392 to 0.410 where its
/// errors are linked and from 0.424 to 0.448 where they are not; P taken as it is from a dozen futures gave 0.397 and 0.443 (the tool hindcast of tests/GddWatch.Validation, one made-up forecast for each issue).</para>
/// <para>Source: ensemble filter with perturbed observations, Burgers, van Leeuwen &amp; Evensen 1998, Mon. Weather Rev. 126:1719-1724 (MEMORY).</para>
/// </summary>
internal static class ForecastWeighing
{
    /// <summary>Keeps P invertible where all futures agree [°C²].</summary>
    private const double SmallestVariance = 1e-6;

    /// <summary>The forecast days of each future [°C].</summary>
    /// <param name="futures">The days of each future without the forecast, one row a future, at least two rows [°C].</param>
    /// <param name="said">The forecast [°C].</param>
    /// <param name="errors">Each future's draw of the forecast's error [°C].</param>
    /// <param name="deviationsC">The error's standard deviation on each day [°C].</param>
    /// <param name="largestLink">How closely errors of following days go together at most.</param>
    public static double[][] Weigh(double[][] futures, double[] said, double[][] errors, double[] deviationsC, double largestLink)
    {
        int days = said.Length;
        if (days == 0 || deviationsC.All(deviation => deviation <= 0)) return [.. futures.Select(_ => said)];
        Matrix<double> p = SpreadOf(futures, days);
        Matrix<double> r = Matrix<double>.Build.Dense(days, days);
        for (int i = 0; i < days; i++)
        {
            double covariance = r[i, i] = deviationsC[i] * deviationsC[i];
            for (int j = i + 1; j < days; j++)
            {
                covariance *= ForecastErrors.Carried(deviationsC[j - 1], deviationsC[j], largestLink);
                r[i, j] = r[j, i] = covariance;
            }
        }

        var both = (p + r).Cholesky();
        return
        [
            .. futures.Select((future, member) =>
            {
                Vector<double> miss = Vector<double>.Build.Dense(days, k => said[k] - errors[member][k] - future[k]);
                Vector<double> moved = p * both.Solve(miss);
                return (double[])[.. moved.Select((by, k) => future[k] + by)];
            }),
        ];
    }

    private static Matrix<double> SpreadOf(double[][] futures, int days)
    {
        double[] means = [.. Enumerable.Range(0, days).Select(k => futures.Average(future => future[k]))];
        double[] deviations = [.. Enumerable.Range(0, days).Select(k => Math.Sqrt(Together(k, k) + SmallestVariance))];
        double correlation = 0;
        for (int k = 1; k < days; k++) correlation += Together(k - 1, k) / (deviations[k - 1] * deviations[k]) / (days - 1);
        correlation = Math.Clamp(correlation, 0, 1 - SmallestVariance);
        return Matrix<double>.Build.Dense(days, days, (i, j) => deviations[i] * deviations[j] * Math.Pow(correlation, Math.Abs(i - j)));

        double Together(int i, int j) => futures.Sum(future => (future[i] - means[i]) * (future[j] - means[j])) / (futures.Length - 1);
    }
}
