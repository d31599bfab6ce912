using GddWatch.Agronomy.Heat;
using MathNet.Numerics.Integration;
using Xunit;

namespace GddWatch.Agronomy.Tests.Heat.Laws;

/// <summary>The closed forms against Gauss-Legendre integration by Math.NET Numerics of each cutoff's response over each curve.</summary>
public class QuadratureLawTests
{
    [Fact]
    public void Sines_equal_the_integral_of_the_response_over_the_sine() =>
        Check(DegreeDayMethod.SingleSine, DegreeDayMethod.DoubleSine, SineAt, WhenOnSine);

    [Fact]
    public void Triangles_equal_the_integral_of_the_response_over_the_triangle() =>
        Check(DegreeDayMethod.SingleTriangle, DegreeDayMethod.DoubleTriangle, LineAt, WhenOnLine);

    private static void Check(
        DegreeDayMethod one, DegreeDayMethod doubled, Func<double, double, double, double> curve, Func<double, double, double, double> when)
    {
        RandomDays.Each(4_000, day =>
        {
            double nextLow = Math.Min(day.NextMinimumC, day.MaximumC);
            double nextHigh = Math.Max(day.NextMinimumC, day.MaximumC);
            foreach (DegreeDayCutoff cutoff in Enum.GetValues<DegreeDayCutoff>())
            {
                double first = Integral(cutoff, day.MinimumC, day.MaximumC, day, curve, when);
                double second = Integral(cutoff, nextLow, nextHigh, day, curve, when);
                double heat = DailyHeat.DegreeDays(one, cutoff, day.MinimumC, day.MaximumC, double.NaN, day.BaseC, day.UpperC);
                double both = DailyHeat.DegreeDays(doubled, cutoff, day.MinimumC, day.MaximumC, day.NextMinimumC, day.BaseC, day.UpperC);
                Assert.True(Math.Abs(heat - first) <= 1e-11, $"{one} {cutoff}: {heat:R}, integral {first:R}");
                Assert.True(Math.Abs(both - (first + second) / 2) <= 1e-11, $"{doubled} {cutoff}: {both:R}, integral {(first + second) / 2:R}");
            }
        });
    }

    private static double Integral(
        DegreeDayCutoff cutoff,
        double low,
        double high,
        RandomDay day,
        Func<double, double, double, double> curve,
        Func<double, double, double, double> when)
    {
        double sum = 0;
        if (low == high)
        {
            sum = Response(cutoff, low, day.BaseC, day.UpperC);
        }
        else
        {
            // Split where the response bends or jumps, so that each piece is smooth.
            double[] bends = [day.BaseC, day.UpperC, 2 * day.UpperC - day.BaseC];
            double[] ends = [0, .. bends.Where(c => c > low && c < high).Select(c => when(c, low, high)).Order(), 1];
            for (int i = 0; i + 1 < ends.Length; i++)
            {
                sum += GaussLegendreRule.Integrate(t => Response(cutoff, curve(t, low, high), day.BaseC, day.UpperC), ends[i], ends[i + 1], 32);
            }
        }

        return cutoff == DegreeDayCutoff.Intermediate ? Math.Max(0, sum) : sum;
    }

    private static double Response(DegreeDayCutoff cutoff, double temperature, double lower, double upper)
    {
        if (temperature <= lower) return 0;
        if (cutoff == DegreeDayCutoff.None || temperature <= upper) return temperature - lower;
        return cutoff switch
        {
            DegreeDayCutoff.Horizontal => upper - lower,
            DegreeDayCutoff.Intermediate => 2 * upper - lower - temperature,
            DegreeDayCutoff.IntermediatePointwise => Math.Max(0, 2 * upper - lower - temperature),
            _ => 0,
        };
    }

    // The rising half alone: the falling half is its mirror. Time runs from 0 at the minimum to 1 at the maximum.
    private static double SineAt(double t, double low, double high) => (low + high) / 2 - (high - low) / 2 * Math.Cos(Math.PI * t);

    private static double WhenOnSine(double c, double low, double high) => Math.Acos(((low + high) / 2 - c) / ((high - low) / 2)) / Math.PI;

    private static double LineAt(double t, double low, double high) => low + (high - low) * t;

    private static double WhenOnLine(double c, double low, double high) => (c - low) / (high - low);
}
