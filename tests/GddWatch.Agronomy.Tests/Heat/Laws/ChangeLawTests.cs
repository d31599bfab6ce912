using GddWatch.Agronomy.Heat;
using Xunit;

namespace GddWatch.Agronomy.Tests.Heat.Laws;

/// <summary>How heat changes with its temperatures: science reference 1.7 (CALC).</summary>
public class ChangeLawTests
{
    private const double Rounding = 1e-12;

    /// <summary>
    /// For none and horizontal alone, where it is claimed: under the intermediate and vertical cutoffs a warmer day may count less, which the test after this
    /// one holds fast.
    /// </summary>
    [Fact]
    public void Without_cutoff_or_with_a_horizontal_one_a_warmer_extreme_never_gives_less() => RandomDays.Each(20_000, day =>
    {
        foreach (DegreeDayMethod method in Enum.GetValues<DegreeDayMethod>())
        {
            foreach (DegreeDayCutoff cutoff in new[] { DegreeDayCutoff.None, DegreeDayCutoff.Horizontal })
            {
                double heat = Heat(method, cutoff, day);
                double warmerNight = Math.Min(day.MaximumC, day.MinimumC + 0.7);
                Assert.True(Heat(method, cutoff, day with { MaximumC = day.MaximumC + 0.7 }) >= heat - Rounding);
                Assert.True(Heat(method, cutoff, day with { MinimumC = warmerNight }) >= heat - Rounding);
                Assert.True(Heat(method, cutoff, day with { NextMinimumC = day.NextMinimumC + 0.7 }) >= heat - Rounding);
            }
        }
    });

    [Theory]
    [InlineData(DegreeDayCutoff.Intermediate)]
    [InlineData(DegreeDayCutoff.IntermediatePointwise)]
    [InlineData(DegreeDayCutoff.Vertical)]
    public void Under_the_other_cutoffs_a_hotter_day_can_count_less(DegreeDayCutoff cutoff)
    {
        foreach (DegreeDayMethod method in Enum.GetValues<DegreeDayMethod>())
        {
            var warm = new RandomDay(24, 30, 24, 10, 28);
            Assert.True(Heat(method, cutoff, warm with { MinimumC = 29, MaximumC = 38, NextMinimumC = 29 }) < Heat(method, cutoff, warm));
        }
    }

    [Fact]
    public void Heat_does_not_jump_where_an_extreme_passes_a_threshold() => RandomDays.Each(20_000, day =>
    {
        const double Step = 1e-9;
        double[] thresholds = [day.BaseC, day.UpperC, 2 * day.UpperC - day.BaseC];
        foreach (double threshold in thresholds)
        {
            Smooth(threshold, day with { MinimumC = Math.Min(day.MinimumC, threshold - 1), MaximumC = threshold }, warmMaximum: true);
            Smooth(threshold, day with { MinimumC = threshold, MaximumC = Math.Max(day.MaximumC, threshold + 1) }, warmMaximum: false);
        }

        void Smooth(double threshold, RandomDay at, bool warmMaximum)
        {
            foreach (DegreeDayMethod method in new[] { DegreeDayMethod.SingleSine, DegreeDayMethod.SingleTriangle })
            {
                foreach (DegreeDayCutoff cutoff in Enum.GetValues<DegreeDayCutoff>())
                {
                    RandomDay cooler = warmMaximum ? at with { MaximumC = threshold - Step } : at with { MinimumC = threshold - Step };
                    RandomDay warmer = warmMaximum ? at with { MaximumC = threshold + Step } : at with { MinimumC = threshold + Step };

                    // The share of the day above the upper threshold, and with it the vertical cutoff, grows by the root of the step at a sine's crest.
                    double most = cutoff == DegreeDayCutoff.Vertical ? (at.UpperC - at.BaseC) * Math.Sqrt(2 * Step) : 4 * Step;
                    Assert.True(Math.Abs(Heat(method, cutoff, warmer) - Heat(method, cutoff, cooler)) <= most, $"{method} {cutoff} at {threshold:R}");
                }
            }
        }
    });

    [Fact]
    public void Only_the_vertical_cutoff_jumps_and_only_for_a_day_without_range()
    {
        Assert.Equal(20.0, SingleSine.DegreeDays(DegreeDayCutoff.Vertical, 30, 30, 10, 30), Rounding);
        Assert.Equal(0.0, SingleSine.DegreeDays(DegreeDayCutoff.Vertical, 30.000001, 30.000001, 10, 30), Rounding);
        Assert.Equal(10.0, SingleSine.DegreeDays(DegreeDayCutoff.Vertical, 29.999999, 30.000001, 10, 30), 1e-5);
    }

    /// <summary>DD(aT + b; aL + b, aU + b) = a·DD, for any a above 0 and b.</summary>
    [Fact]
    public void Heat_keeps_to_shift_and_scale_so_that_fahrenheit_gives_nine_fifths() => RandomDays.Each(20_000, day =>
    {
        foreach (DegreeDayMethod method in Enum.GetValues<DegreeDayMethod>())
        {
            foreach (DegreeDayCutoff cutoff in Enum.GetValues<DegreeDayCutoff>())
            {
                double heat = Heat(method, cutoff, day);
                Assert.Equal(4 * heat, Heat(method, cutoff, Scaled(day, 4, 0)));

                // Converting rounds, so an extreme on the upper threshold may come to lie beside it, and the vertical cutoff answers that with a step.
                if (cutoff == DegreeDayCutoff.Vertical && IsNearUpper(day)) continue;
                Assert.Equal(1.8 * heat, Heat(method, cutoff, Scaled(day, 1.8, 32)), 1e-10);
                Assert.Equal(heat, Heat(method, cutoff, Scaled(day, 1, 273.15)), 1e-10);
            }
        }
    });

    private static bool IsNearUpper(RandomDay day)
    {
        double[] temperatures = [day.MinimumC, day.MaximumC, day.NextMinimumC, (day.MinimumC + day.MaximumC) / 2];
        return temperatures.Any(t => Math.Abs(t - day.UpperC) < 1e-3);
    }

    private static RandomDay Scaled(RandomDay day, double factor, double offset) => new(
        day.MinimumC * factor + offset, day.MaximumC * factor + offset, day.NextMinimumC * factor + offset, day.BaseC * factor + offset, day.UpperC * factor + offset);

    private static double Heat(DegreeDayMethod method, DegreeDayCutoff cutoff, RandomDay day) =>
        DailyHeat.DegreeDays(method, cutoff, day.MinimumC, day.MaximumC, day.NextMinimumC, day.BaseC, day.UpperC);
}
