using GddWatch.Agronomy.Heat;
using Xunit;

namespace GddWatch.Agronomy.Tests.Heat.Laws;

/// <summary>Which method and which cutoff gives more: science reference 1.7 (CALC).</summary>
public class OrderLawTests
{
    private const double Rounding = 1e-12;

    private static readonly DegreeDayMethod[] CurvesAndAverages = Enum.GetValues<DegreeDayMethod>();

    [Fact]
    public void Above_a_base_alone_simple_is_least_then_triangle_then_sine_then_limited_extremes() => RandomDays.Each(20_000, day =>
    {
        double simple = SimpleAverage.DegreeDays(DegreeDayCutoff.None, day.MinimumC, day.MaximumC, day.BaseC, null);
        double triangle = SingleTriangle.DegreeDays(DegreeDayCutoff.None, day.MinimumC, day.MaximumC, day.BaseC, null);
        double sine = SingleSine.DegreeDays(DegreeDayCutoff.None, day.MinimumC, day.MaximumC, day.BaseC, null);
        double limited = AverageWithLimitedExtremes.DegreeDays(DegreeDayCutoff.None, day.MinimumC, day.MaximumC, day.BaseC, null);
        Assert.True(simple <= triangle + Rounding);
        Assert.True(triangle <= sine + Rounding);
        Assert.True(sine <= limited + Rounding);
    });

    [Fact]
    public void Vertical_gives_at_most_intermediate_pointwise_then_horizontal_then_none() => RandomDays.Each(20_000, day =>
    {
        foreach (DegreeDayMethod method in CurvesAndAverages)
        {
            double vertical = Heat(method, DegreeDayCutoff.Vertical, day);
            double pointwise = Heat(method, DegreeDayCutoff.IntermediatePointwise, day);
            double horizontal = Heat(method, DegreeDayCutoff.Horizontal, day);
            Assert.True(vertical <= pointwise + Rounding, $"{method}: vertical {vertical:R} above pointwise {pointwise:R}");
            Assert.True(pointwise <= horizontal + Rounding, $"{method}: pointwise {pointwise:R} above horizontal {horizontal:R}");
            Assert.True(horizontal <= Heat(method, DegreeDayCutoff.None, day) + Rounding);
        }
    });

    [Fact]
    public void The_floor_of_the_day_gives_at_most_the_floor_of_each_moment_and_is_the_same_while_the_day_stays_below_the_turning_point() =>
        RandomDays.Each(20_000, day =>
        {
            foreach (DegreeDayMethod method in CurvesAndAverages)
            {
                double ofDay = Heat(method, DegreeDayCutoff.Intermediate, day);
                double ofMoment = Heat(method, DegreeDayCutoff.IntermediatePointwise, day);
                Assert.True(ofDay <= ofMoment + Rounding);
                bool turns = Math.Max(day.MaximumC, day.NextMinimumC) > 2 * day.UpperC - day.BaseC;
                if (!turns) Assert.Equal(ofMoment, ofDay, Rounding);
            }
        });

    [Fact]
    public void No_day_has_less_than_no_heat_and_none_more_than_its_maximum_above_the_base() => RandomDays.Each(20_000, day =>
    {
        double most = Math.Max(0, Math.Max(day.MaximumC, day.NextMinimumC) - day.BaseC);
        foreach (DegreeDayMethod method in CurvesAndAverages)
        {
            foreach (DegreeDayCutoff cutoff in Enum.GetValues<DegreeDayCutoff>()) Assert.InRange(Heat(method, cutoff, day), 0, most + Rounding);
        }
    });

    [Fact]
    public void A_day_whose_middle_is_the_middle_of_the_band_has_half_the_band_under_a_horizontal_cutoff() => RandomDays.Each(20_000, day =>
    {
        double middle = (day.BaseC + day.UpperC) / 2;
        double halfRange = (day.MaximumC - day.MinimumC) / 2;
        double half = (day.UpperC - day.BaseC) / 2;
        Assert.Equal(half, SingleSine.DegreeDays(DegreeDayCutoff.Horizontal, middle - halfRange, middle + halfRange, day.BaseC, day.UpperC), Rounding);
        Assert.Equal(half, SingleTriangle.DegreeDays(DegreeDayCutoff.Horizontal, middle - halfRange, middle + halfRange, day.BaseC, day.UpperC), Rounding);
    });

    [Fact]
    public void A_double_method_is_its_single_one_where_the_next_minimum_is_the_same() => RandomDays.Each(20_000, day =>
    {
        foreach (DegreeDayCutoff cutoff in Enum.GetValues<DegreeDayCutoff>())
        {
            RandomDay same = day with { NextMinimumC = day.MinimumC };
            Assert.Equal(Heat(DegreeDayMethod.SingleSine, cutoff, day), Heat(DegreeDayMethod.DoubleSine, cutoff, same));
            Assert.Equal(Heat(DegreeDayMethod.SingleTriangle, cutoff, day), Heat(DegreeDayMethod.DoubleTriangle, cutoff, same));
        }
    });

    [Fact]
    public void A_day_without_range_has_the_heat_of_its_temperature_by_every_method() => RandomDays.Each(20_000, day =>
    {
        foreach (DegreeDayCutoff cutoff in Enum.GetValues<DegreeDayCutoff>())
        {
            double t = day.MaximumC;
            double response = t <= day.BaseC ? 0 : t <= day.UpperC || cutoff == DegreeDayCutoff.None ? t - day.BaseC : cutoff switch
            {
                DegreeDayCutoff.Horizontal => day.UpperC - day.BaseC,
                DegreeDayCutoff.Vertical => 0,
                _ => Math.Max(0, 2 * day.UpperC - day.BaseC - t),
            };
            RandomDay flat = day with { MinimumC = t, NextMinimumC = t };
            foreach (DegreeDayMethod method in CurvesAndAverages) Assert.Equal(response, Heat(method, cutoff, flat), Rounding);
        }
    });

    private static double Heat(DegreeDayMethod method, DegreeDayCutoff cutoff, RandomDay day) =>
        DailyHeat.DegreeDays(method, cutoff, day.MinimumC, day.MaximumC, day.NextMinimumC, day.BaseC, day.UpperC);
}
