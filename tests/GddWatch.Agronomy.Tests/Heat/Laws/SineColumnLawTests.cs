using GddWatch.Agronomy.Heat;
using Xunit;

namespace GddWatch.Agronomy.Tests.Heat.Laws;

/// <summary>Columns of sines are reckoned several days at once, with an arccosine of our own: against the framework's, one day at a time.</summary>
public class SineColumnLawTests
{
    private static readonly DegreeDayCutoff[] Cutoffs = Enum.GetValues<DegreeDayCutoff>();

    [Fact]
    public void Wherever_the_threshold_lies_in_the_day_the_column_has_the_heat_of_the_framework_s_arccosine()
    {
        // The upper threshold swept through the day from its minimum to its maximum; W = 1, so that the heat is the function of x itself.
        const int Steps = 10_000;
        foreach (DegreeDayCutoff cutoff in Cutoffs)
        {
            for (int i = -2; i <= Steps + 2; i++)
            {
                double upper = 9 + 2.0 * i / Steps;
                Assert.Equal(SingleSine.DegreeDays(cutoff, 9, 11, 7, upper), Alone(cutoff, 9, 11, 7, upper), 4e-15);
            }
        }
    }

    [Fact]
    public void A_threshold_a_breath_inside_the_extremes_gives_a_number() => RandomDays.Each(20_000, day =>
    {
        if (day.MinimumC == day.MaximumC) return;
        double upper = Math.BitIncrement(day.MinimumC);
        double lower = upper - 5;
        foreach (DegreeDayCutoff cutoff in Cutoffs)
        {
            double heat = SingleSine.DegreeDays(cutoff, day.MinimumC, day.MaximumC, lower, upper);
            Assert.True(double.IsFinite(heat));
            Assert.Equal(heat, Alone(cutoff, day.MinimumC, day.MaximumC, lower, upper), 1e-12);
        }
    });

    [Fact]
    public void No_threshold_just_below_the_crest_gives_less_than_no_heat()
    {
        double threshold = 1;
        for (int i = 0; i < 2_000; i++)
        {
            threshold = Math.BitDecrement(threshold);
            Assert.InRange(SingleSine.DegreeDays(DegreeDayCutoff.None, -1, 1, threshold, null), 0, 1e-15);
            Assert.InRange(Alone(DegreeDayCutoff.None, -1, 1, threshold, null), 0, 1e-15);
        }
    }

    [Fact]
    public void A_day_has_the_same_bits_wherever_it_stands_in_a_column()
    {
        (double[] minimum, double[] maximum) = RandomDays.Column(67, stream: 5);
        Span<double> together = stackalloc double[67];
        foreach (DegreeDayCutoff cutoff in Cutoffs)
        {
            // A start on every day leaves each day's own heat.
            HeatSum.Accumulate(DegreeDayMethod.SingleSine, cutoff, minimum, maximum, 10, 25, [.. Enumerable.Range(0, 67)], together);
            for (int i = 0; i < 67; i++) Assert.Equal(together[i], Alone(cutoff, minimum[i], maximum[i], 10, 25));
        }
    }

    private static double Alone(DegreeDayCutoff cutoff, double minimumC, double maximumC, double baseC, double? upperC)
    {
        Span<double> sums = stackalloc double[1];
        HeatSum.Accumulate(DegreeDayMethod.SingleSine, cutoff, [minimumC], [maximumC], baseC, upperC, [0], sums);
        return sums[0];
    }
}
