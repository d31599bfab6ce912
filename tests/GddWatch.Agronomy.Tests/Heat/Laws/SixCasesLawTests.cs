using GddWatch.Agronomy.Heat;
using Xunit;

namespace GddWatch.Agronomy.Tests.Heat.Laws;

/// <summary>
/// The six cases as the classical tables print them: science reference 1.4 and 1.5, after Zalom et al. 1983, Univ. California Leaflet 21373 (MEMORY). Written
/// out here a second time, case by case, against the one scheme of the code.
/// </summary>
public class SixCasesLawTests
{
    [Fact]
    public void Single_sine_equals_the_six_classical_cases() => RandomDays.Each(20_000, day =>
    {
        foreach (DegreeDayCutoff cutoff in new[] { DegreeDayCutoff.Horizontal, DegreeDayCutoff.Intermediate, DegreeDayCutoff.Vertical })
        {
            double heat = SingleSine.DegreeDays(cutoff, day.MinimumC, day.MaximumC, day.BaseC, day.UpperC);
            Assert.Equal(Sine(cutoff, day.MinimumC, day.MaximumC, day.BaseC, day.UpperC), heat, 1e-10);
        }
    });

    [Fact]
    public void Single_triangle_equals_the_six_classical_cases() => RandomDays.Each(20_000, day =>
    {
        foreach (DegreeDayCutoff cutoff in new[] { DegreeDayCutoff.Horizontal, DegreeDayCutoff.Intermediate, DegreeDayCutoff.Vertical })
        {
            double heat = SingleTriangle.DegreeDays(cutoff, day.MinimumC, day.MaximumC, day.BaseC, day.UpperC);
            Assert.Equal(Triangle(cutoff, day.MinimumC, day.MaximumC, day.BaseC, day.UpperC), heat, 1e-10);
        }
    });

    private static double Sine(DegreeDayCutoff cutoff, double low, double high, double lower, double upper)
    {
        double m = (high + low) / 2;
        double w = (high - low) / 2;
        if (WithoutCurve(cutoff, low, high, lower, upper) is { } plain) return plain;
        double theta1 = low < lower ? Math.Asin((lower - m) / w) : -Math.PI / 2;
        if (high <= upper) return ((m - lower) * (Math.PI / 2 - theta1) + w * Math.Cos(theta1)) / Math.PI;
        double theta2 = Math.Asin((upper - m) / w);
        double below = low < lower
            ? (m - lower) * (theta2 - theta1) + w * (Math.Cos(theta1) - Math.Cos(theta2))
            : (m - lower) * (theta2 + Math.PI / 2) - w * Math.Cos(theta2);
        double horizontal = (below + (upper - lower) * (Math.PI / 2 - theta2)) / Math.PI;
        return cutoff switch
        {
            DegreeDayCutoff.Horizontal => horizontal,
            DegreeDayCutoff.Intermediate => Math.Max(0, horizontal - ((m - upper) * (Math.PI / 2 - theta2) + w * Math.Cos(theta2)) / Math.PI),
            _ => below / Math.PI,
        };
    }

    private static double Triangle(DegreeDayCutoff cutoff, double low, double high, double lower, double upper)
    {
        double m = (high + low) / 2;
        double r = high - low;
        if (WithoutCurve(cutoff, low, high, lower, upper) is { } plain) return plain;
        if (high <= upper) return (high - lower) * (high - lower) / (2 * r);
        double overUpper = (high - upper) * (high - upper) / (2 * r);
        double horizontal = low < lower ? ((high - lower) * (high - lower) - (high - upper) * (high - upper)) / (2 * r) : m - lower - overUpper;
        return cutoff switch
        {
            DegreeDayCutoff.Horizontal => horizontal,
            DegreeDayCutoff.Intermediate => Math.Max(0, horizontal - overUpper),
            _ => horizontal - (upper - lower) * (high - upper) / r,
        };
    }

    /// <summary>Cases 1 to 3. A day without range exactly on the upper threshold belongs to case 3: there the rate has not stopped yet.</summary>
    private static double? WithoutCurve(DegreeDayCutoff cutoff, double low, double high, double lower, double upper)
    {
        double m = (high + low) / 2;
        if (high <= lower) return 0;
        if (low >= lower && high <= upper) return m - lower;
        if (low < upper) return null;
        return cutoff switch
        {
            DegreeDayCutoff.Horizontal => upper - lower,
            DegreeDayCutoff.Intermediate => Math.Max(0, 2 * upper - lower - m),
            _ => 0,
        };
    }
}
