using GddWatch.Agronomy.Heat;
using Xunit;

namespace GddWatch.Agronomy.Tests.Heat;

public class DailyHeatTests
{
    public static TheoryData<DegreeDayMethod> Methods => [.. Enum.GetValues<DegreeDayMethod>()];

    public static TheoryData<DegreeDayMethod, DegreeDayCutoff> MethodsAndCutoffs
    {
        get
        {
            var all = new TheoryData<DegreeDayMethod, DegreeDayCutoff>();
            foreach (DegreeDayMethod method in Enum.GetValues<DegreeDayMethod>())
            {
                foreach (DegreeDayCutoff cutoff in Enum.GetValues<DegreeDayCutoff>()) all.Add(method, cutoff);
            }

            return all;
        }
    }

    [Theory]
    [MemberData(nameof(MethodsAndCutoffs))]
    public void A_missing_extreme_is_refused_with_its_name_and_value_and_is_never_a_day_without_heat(DegreeDayMethod method, DegreeDayCutoff cutoff)
    {
        ArgumentOutOfRangeException minimum = Refusal(() => DailyHeat.DegreeDays(method, cutoff, double.NaN, 5, 3, 10, 30));
        Assert.Equal("minimum temperature", minimum.ParamName);
        Assert.Contains("minimum temperature [°C] was NaN; allowed is a finite number.", minimum.Message, StringComparison.Ordinal);
        Assert.Equal("maximum temperature", Refusal(() => DailyHeat.DegreeDays(method, cutoff, 35, double.NaN, 31, 10, 30)).ParamName);
        Assert.Equal("minimum temperature", Refusal(() => DailyHeat.DegreeDays(method, cutoff, double.NaN, double.NaN, 3, 10, null)).ParamName);
    }

    [Theory]
    [MemberData(nameof(MethodsAndCutoffs))]
    public void A_missing_next_minimum_matters_to_the_double_methods_alone(DegreeDayMethod method, DegreeDayCutoff cutoff)
    {
        double Heat() => DailyHeat.DegreeDays(method, cutoff, 5, 25, double.NaN, 10, 30);
        if (DailyHeat.ReadsNextMinimum(method)) Assert.Equal("next day's minimum temperature", Refusal(Heat).ParamName);
        else Assert.True(double.IsFinite(Heat()));
    }

    [Theory]
    [MemberData(nameof(Methods))]
    public void A_minimum_above_the_maximum_is_refused_with_both_values(DegreeDayMethod method)
    {
        ArgumentOutOfRangeException refusal = Refusal(() => DailyHeat.DegreeDays(method, DegreeDayCutoff.None, 12.5, 11.25, 3, 10, null));
        Assert.Equal("minimum temperature", refusal.ParamName);
        Assert.Contains("12.5", refusal.Message, StringComparison.Ordinal);
        Assert.Contains("11.25", refusal.Message, StringComparison.Ordinal);
    }

    [Theory]
    [MemberData(nameof(Methods))]
    public void Infinite_temperatures_are_refused_by_name(DegreeDayMethod method)
    {
        Assert.Equal("minimum temperature", Refusal(() => DailyHeat.DegreeDays(method, DegreeDayCutoff.None, double.NegativeInfinity, 5, 3, 10, null)).ParamName);
        Assert.Equal("maximum temperature", Refusal(() => DailyHeat.DegreeDays(method, DegreeDayCutoff.None, 5, double.PositiveInfinity, 3, 10, null)).ParamName);
        if (!DailyHeat.ReadsNextMinimum(method)) return;
        Assert.Equal("next day's minimum temperature", Refusal(() => DailyHeat.DegreeDays(method, DegreeDayCutoff.None, 5, 9, double.NegativeInfinity, 10, null)).ParamName);
    }

    [Theory]
    [MemberData(nameof(Methods))]
    public void A_base_at_or_above_the_upper_threshold_is_refused_with_both_values(DegreeDayMethod method)
    {
        ArgumentOutOfRangeException above = Refusal(() => DailyHeat.DegreeDays(method, DegreeDayCutoff.Horizontal, 5, 9, 4, 30.5, 10.25));
        Assert.Equal("upper threshold", above.ParamName);
        Assert.Contains("30.5", above.Message, StringComparison.Ordinal);
        Assert.Contains("10.25", above.Message, StringComparison.Ordinal);
        Assert.Equal("upper threshold", Refusal(() => DailyHeat.DegreeDays(method, DegreeDayCutoff.None, 5, 9, 4, 10, 10)).ParamName);
    }

    [Theory]
    [MemberData(nameof(Methods))]
    public void Thresholds_that_are_no_numbers_are_refused_by_name(DegreeDayMethod method)
    {
        Assert.Equal("base temperature", Refusal(() => DailyHeat.DegreeDays(method, DegreeDayCutoff.None, 5, 9, 4, double.NaN, null)).ParamName);
        Assert.Equal("base temperature", Refusal(() => DailyHeat.DegreeDays(method, DegreeDayCutoff.None, 5, 9, 4, double.NegativeInfinity, null)).ParamName);
        Assert.Equal("upper threshold", Refusal(() => DailyHeat.DegreeDays(method, DegreeDayCutoff.None, 5, 9, 4, 10, double.NaN)).ParamName);
        Assert.Equal("upper threshold", Refusal(() => DailyHeat.DegreeDays(method, DegreeDayCutoff.None, 5, 9, 4, 10, double.PositiveInfinity)).ParamName);
    }

    [Fact]
    public void A_method_or_cutoff_without_a_name_is_refused_even_where_it_would_not_act()
    {
        Assert.Equal("method", Refusal(() => DailyHeat.DegreeDays((DegreeDayMethod)9, DegreeDayCutoff.None, 5, 9, 4, 10, 30)).ParamName);
        foreach (DegreeDayMethod method in Enum.GetValues<DegreeDayMethod>())
        {
            Assert.Equal("cutoff", Refusal(() => DailyHeat.DegreeDays(method, (DegreeDayCutoff)9, 5, 9, 4, 10, null)).ParamName);
        }
    }

    [Theory]
    [MemberData(nameof(MethodsAndCutoffs))]
    public void Without_an_upper_threshold_a_cutoff_has_nothing_to_act_on(DegreeDayMethod method, DegreeDayCutoff cutoff)
    {
        double heat = DailyHeat.DegreeDays(method, cutoff, 5, 45, 7, 10, null);
        Assert.Equal(DailyHeat.DegreeDays(method, DegreeDayCutoff.None, 5, 45, 7, 10, 30), heat);
    }

    [Fact]
    public void The_two_intermediate_floors_differ_where_the_rate_would_fall_below_zero()
    {
        // Derived: base 10, upper 15, one extreme at 24 (rate 2·15 − 10 − 24 = −4), the other at 14 (rate 4).
        Assert.Equal(0.0, AverageWithLimitedExtremes.DegreeDays(DegreeDayCutoff.Intermediate, 14, 24, 10, 15));
        Assert.Equal(2.0, AverageWithLimitedExtremes.DegreeDays(DegreeDayCutoff.IntermediatePointwise, 14, 24, 10, 15));
    }

    [Theory]
    [InlineData(DegreeDayCutoff.None, 25.0)]
    [InlineData(DegreeDayCutoff.Horizontal, 20.0)]
    [InlineData(DegreeDayCutoff.Intermediate, 15.0)]
    [InlineData(DegreeDayCutoff.IntermediatePointwise, 15.0)]
    [InlineData(DegreeDayCutoff.Vertical, 0.0)]
    public void The_cutoffs_act_on_the_simple_average_as_on_a_day_at_that_temperature(DegreeDayCutoff cutoff, double heat)
    {
        // Derived: the response at 35 with base 10 and upper 30 (case C24 of the reference file, CALC).
        Assert.Equal(heat, SimpleAverage.DegreeDays(cutoff, 30, 40, 10, 30));
    }

    [Theory]
    [InlineData(DegreeDayMethod.DoubleSine, DegreeDayMethod.SingleSine)]
    [InlineData(DegreeDayMethod.DoubleTriangle, DegreeDayMethod.SingleTriangle)]
    public void A_night_warmer_than_the_day_was_is_a_second_half_that_rises(DegreeDayMethod doubled, DegreeDayMethod half)
    {
        double heat = DailyHeat.DegreeDays(doubled, DegreeDayCutoff.None, -3, 8, 14, 5, null);
        double first = DailyHeat.DegreeDays(half, DegreeDayCutoff.None, -3, 8, double.NaN, 5, null);
        double second = DailyHeat.DegreeDays(half, DegreeDayCutoff.None, 8, 14, double.NaN, 5, null);
        Assert.Equal((first + second) / 2, heat, 1e-12);
    }

    private static ArgumentOutOfRangeException Refusal(Func<double> act) => Assert.Throws<ArgumentOutOfRangeException>(() => act());
}
