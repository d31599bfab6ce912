using GddWatch.Agronomy.Heat;
using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Weather;
using Xunit;

namespace GddWatch.Agronomy.Tests.Heat;

public class HeatSumTests
{
    private static readonly HeatSumDefinition FromFirstOfMarch = new(
        Temperature.FromCelsius(10), Temperature.FromCelsius(30), DegreeDayMethod.SimpleAverage, DegreeDayCutoff.Horizontal, AnnualDay.Of(3, 1));

    [Fact]
    public void The_start_date_is_the_first_day_to_count_and_no_day_before_it_has_a_sum()
    {
        DailySeries series = SeriesOf.Alike(new DateOnly(2023, 2, 27), 5, 10, 14);
        HeatSums sums = HeatSum.Over(series, FromFirstOfMarch, Hemisphere.Northern, []);
        Assert.Equal([double.NaN, double.NaN, 2, 4, 6], sums.CelsiusDays);
        Assert.Equal([new HeatSumSeason(new DateOnly(2023, 3, 1), new DateOnly(2023, 3, 1))], sums.Seasons);
        Assert.Null(sums.SeasonOf(new DateOnly(2023, 2, 28)));
    }

    [Fact]
    public void A_series_that_begins_on_the_start_date_has_a_sum_from_its_first_day() =>
        Assert.Equal([2, 4], HeatSum.Column(SeriesOf.Alike(new DateOnly(2023, 3, 1), 2, 10, 14), FromFirstOfMarch, Hemisphere.Northern, []));

    [Fact]
    public void A_series_that_begins_after_the_start_date_has_no_sum_until_the_next()
    {
        DailySeries series = SeriesOf.Alike(new DateOnly(2023, 3, 2), 367, 10, 14);
        double[] sums = HeatSum.Column(series, FromFirstOfMarch, Hemisphere.Northern, []);
        int start = series.IndexOf(new DateOnly(2024, 3, 1));
        Assert.All(sums[..start], sum => Assert.True(double.IsNaN(sum)));
        Assert.Equal([2, 4], sums[start..]);
    }

    [Fact]
    public void Each_year_starts_again_from_zero()
    {
        DailySeries series = SeriesOf.Alike(new DateOnly(2022, 3, 1), 3 * 365 + 1, 10, 14);
        HeatSums sums = HeatSum.Over(series, FromFirstOfMarch, Hemisphere.Northern, []);
        Assert.Equal(2.0 * 365, sums.CelsiusDays[364]);
        Assert.Equal(2.0, sums.CelsiusDays[365]);
        Assert.Equal(2.0, sums.CelsiusDays[series.IndexOf(new DateOnly(2024, 3, 1))]);
        Assert.Equal([2022, 2023, 2024], sums.Seasons.Select(season => season.Start.Year));
        Assert.Equal(2023, sums.SeasonOf(new DateOnly(2024, 2, 29))?.Start.Year);
    }

    [Fact]
    public void In_the_south_the_year_starts_half_a_year_later()
    {
        DailySeries series = SeriesOf.Alike(new DateOnly(2023, 1, 1), 365, 10, 14);
        HeatSums sums = HeatSum.Over(series, FromFirstOfMarch, Hemisphere.Southern, []);
        Assert.Equal(new DateOnly(2023, 8, 29), Assert.Single(sums.Seasons).Start);
        Assert.Equal(2.0, sums.CelsiusDays[series.IndexOf(new DateOnly(2023, 8, 29))]);
    }

    [Fact]
    public void A_start_on_29_February_falls_on_the_28th_where_the_year_has_none()
    {
        HeatSumDefinition leap = FromFirstOfMarch with { Start = AnnualDay.Of(2, 29) };
        HeatSums sums = HeatSum.Over(SeriesOf.Alike(new DateOnly(2023, 1, 1), 2 * 365, 10, 14), leap, Hemisphere.Northern, []);
        Assert.Equal([new DateOnly(2023, 2, 28), new DateOnly(2024, 2, 29)], sums.Seasons.Select(season => season.Start));
    }

    [Fact]
    public void Method_and_cutoff_of_the_definition_decide()
    {
        DailySeries hot = SeriesOf.Alike(new DateOnly(2023, 3, 1), 2, 5, 35);

        // Science reference 1.8, case C15 (CALC).
        Assert.Equal(20.0, HeatSum.Column(hot, FromFirstOfMarch with { Method = DegreeDayMethod.SingleSine }, Hemisphere.Northern, [])[1], 1e-9);
        HeatSumDefinition vertical = FromFirstOfMarch with { Method = DegreeDayMethod.SingleSine, Cutoff = DegreeDayCutoff.Vertical };
        Assert.Equal(2 * 4.6456, HeatSum.Column(hot, vertical, Hemisphere.Northern, [])[1], 1e-4);
    }

    [Fact]
    public void An_upper_threshold_without_cutoff_does_nothing()
    {
        DailySeries hot = SeriesOf.Alike(new DateOnly(2023, 3, 1), 1, 30, 40);
        Assert.Equal(25.0, HeatSum.Column(hot, FromFirstOfMarch with { Cutoff = DegreeDayCutoff.None }, Hemisphere.Northern, [])[0]);
        Assert.Equal(20.0, HeatSum.Column(hot, FromFirstOfMarch, Hemisphere.Northern, [])[0]);
    }

    [Theory]
    [InlineData(DegreeDayMethod.DoubleSine)]
    [InlineData(DegreeDayMethod.DoubleTriangle)]
    public void A_double_method_reads_tomorrows_minimum_and_calls_the_last_day_provisional(DegreeDayMethod method)
    {
        HeatSumDefinition doubled = FromFirstOfMarch with { Method = method };
        DailySeries two = SeriesOf.Days(new DateOnly(2023, 3, 1), [5, 12], [15, 15]);
        HeatSums known = HeatSum.Over(two, doubled, Hemisphere.Northern, []);
        HeatSums cut = HeatSum.Over(two.Until(new DateOnly(2023, 3, 1))!, doubled, Hemisphere.Northern, []);
        Assert.True(known.LastDayIsProvisional);
        Assert.True(cut.LastDayIsProvisional);
        Assert.Equal(DailyHeat.DegreeDays(method, DegreeDayCutoff.Horizontal, 5, 15, 12, 10, 30), known.CelsiusDays[0], 1e-12);
        Assert.Equal(DailyHeat.DegreeDays(method, DegreeDayCutoff.Horizontal, 5, 15, 5, 10, 30), cut.CelsiusDays[0], 1e-12);
    }

    [Fact]
    public void A_sum_is_provisional_only_where_tomorrow_can_change_it()
    {
        HeatSumDefinition doubled = FromFirstOfMarch with { Method = DegreeDayMethod.DoubleSine };
        DailySeries march = SeriesOf.Alike(new DateOnly(2023, 3, 1), 3, 10, 14);
        Assert.False(HeatSum.Over(march, FromFirstOfMarch with { Method = DegreeDayMethod.SingleSine }, Hemisphere.Northern, []).LastDayIsProvisional);
        Assert.False(HeatSum.Over(march, doubled with { SoilDepth = Depth.FromCentimetres(5) }, Hemisphere.Northern, [12, 12, 12]).LastDayIsProvisional);
        Assert.False(HeatSum.Over(SeriesOf.Alike(new DateOnly(2023, 2, 1), 3, 10, 14), doubled, Hemisphere.Northern, []).LastDayIsProvisional);
        DailySeries holed = SeriesOf.Days(new DateOnly(2023, 3, 1), [10, double.NaN, 10], [14, 14, 14]);
        Assert.False(HeatSum.Over(holed, doubled, Hemisphere.Northern, []).LastDayIsProvisional);
    }

    [Fact]
    public void A_day_before_a_missing_one_keeps_the_sum_that_it_had_on_the_day()
    {
        HeatSumDefinition doubled = FromFirstOfMarch with { Method = DegreeDayMethod.DoubleSine };
        DailySeries holed = SeriesOf.Days(new DateOnly(2023, 3, 1), [5, double.NaN, 6], [15, 16, 17]);
        double[] sums = HeatSum.Column(holed, doubled, Hemisphere.Northern, []);
        Assert.Equal([DailyHeat.DegreeDays(DegreeDayMethod.SingleSine, DegreeDayCutoff.Horizontal, 5, 15, 5, 10, 30), double.NaN, double.NaN], sums);
    }

    [Fact]
    public void A_series_that_must_be_complete_is_refused_with_the_first_day_that_it_lacks()
    {
        DailySeries whole = SeriesOf.Alike(new DateOnly(2023, 3, 1), 4, 10, 14);
        Assert.Equal([2, 4, 6, 8], HeatSum.OverComplete(whole, FromFirstOfMarch, Hemisphere.Northern, []).CelsiusDays);
        DailySeries holed = SeriesOf.Days(new DateOnly(2023, 3, 1), [10, 10, 10, 10], [14, double.NaN, 14, double.NaN]);
        ArgumentOutOfRangeException refusal = Assert.Throws<ArgumentOutOfRangeException>(
            () => HeatSum.OverComplete(holed, FromFirstOfMarch, Hemisphere.Northern, []));
        Assert.Equal("maximum temperature", refusal.ParamName);
        Assert.Equal(double.NaN, refusal.ActualValue);
        Assert.Contains("maximum temperature of Thursday 2023-03-02 [°C] was NaN (missing), on 2 days in all", refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_soil_sum_that_must_be_complete_asks_for_the_soil_and_for_the_air_only_where_a_biofix_reads_it()
    {
        DailySeries holed = SeriesOf.Days(new DateOnly(2023, 3, 1), [10, double.NaN, 10], [14, 14, 14]);
        HeatSumDefinition soil = FromFirstOfMarch with { SoilDepth = Depth.FromCentimetres(5) };
        Assert.Equal([2, 4, 6], HeatSum.OverComplete(holed, soil, Hemisphere.Northern, [12, 12, 12]).CelsiusDays);
        ArgumentOutOfRangeException refusal = Assert.Throws<ArgumentOutOfRangeException>(
            () => HeatSum.OverComplete(holed, soil, Hemisphere.Northern, [12, 12, double.NaN]));
        Assert.Contains("soil temperature of Friday 2023-03-03", refusal.Message, StringComparison.Ordinal);
        HeatSumDefinition biofix = soil with { Biofix = new BiofixCondition(1, Temperature.FromCelsius(5)) };
        Assert.Throws<ArgumentOutOfRangeException>(() => HeatSum.OverComplete(holed, biofix, Hemisphere.Northern, [12, 12, 12]));
    }

    [Fact]
    public void A_soil_sum_takes_each_day_at_its_mean_whatever_the_method()
    {
        DailySeries series = SeriesOf.Alike(new DateOnly(2023, 3, 1), 4, -5, 40);
        foreach (DegreeDayMethod method in Enum.GetValues<DegreeDayMethod>())
        {
            HeatSumDefinition soil = FromFirstOfMarch with { Method = method, SoilDepth = Depth.FromCentimetres(5) };
            Assert.Equal([0, 2, 22, double.NaN], HeatSum.Column(series, soil, Hemisphere.Northern, [8, 12, 31, double.NaN]));
        }
    }

    [Fact]
    public void A_soil_column_of_other_days_is_refused_with_both_lengths()
    {
        HeatSumDefinition soil = FromFirstOfMarch with { SoilDepth = Depth.FromCentimetres(5) };
        ArgumentException refusal = Assert.Throws<ArgumentException>(
            () => HeatSum.Column(SeriesOf.Alike(new DateOnly(2023, 3, 1), 4, 5, 15), soil, Hemisphere.Northern, [8, 12, 31]));
        Assert.Contains("3 days", refusal.Message, StringComparison.Ordinal);
        Assert.Contains("series 4", refusal.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_day_that_cannot_be_is_refused_with_its_date_and_values()
    {
        foreach (DegreeDayMethod method in Enum.GetValues<DegreeDayMethod>())
        {
            DailySeries series = SeriesOf.Days(new DateOnly(2023, 3, 1), [5, 6, 7, 8, 9, 19.5, 5], [15, 15, 15, 15, 15, 15, 15]);
            ArgumentOutOfRangeException refusal = Assert.Throws<ArgumentOutOfRangeException>(
                () => HeatSum.Column(series, FromFirstOfMarch with { Method = method }, Hemisphere.Northern, []));
            Assert.Contains("of 2023-03-06", refusal.Message, StringComparison.Ordinal);
            Assert.Contains("19.5", refusal.Message, StringComparison.Ordinal);
        }
    }

    [Theory]
    [InlineData(0, double.PositiveInfinity, 20)]
    [InlineData(4, double.NegativeInfinity, 20)]
    [InlineData(5, 5, double.PositiveInfinity)]
    [InlineData(2, 21, 20)]
    public void A_column_is_refused_with_the_place_of_its_impossible_day(int place, double minimumC, double maximumC)
    {
        foreach (DegreeDayMethod method in Enum.GetValues<DegreeDayMethod>())
        {
            double[] minimum = [5, 5, 5, 5, 5, 5, 5];
            double[] maximum = [15, 15, 15, 15, 15, 15, 15];
            (minimum[place], maximum[place]) = (minimumC, maximumC);
            ArgumentOutOfRangeException refusal = Assert.Throws<ArgumentOutOfRangeException>(
                () => HeatSum.Accumulate(method, DegreeDayCutoff.Horizontal, minimum, maximum, 10, 30, [0], new double[7]));
            Assert.Contains($"at place {place} ", refusal.Message, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void Columns_of_different_length_and_starts_out_of_order_are_refused()
    {
        Assert.Throws<ArgumentException>(() => HeatSum.Accumulate(DegreeDayMethod.SingleSine, DegreeDayCutoff.None, [1, 2], [3], 10, null, [0], new double[2]));
        Assert.Throws<ArgumentException>(() => HeatSum.Accumulate(DegreeDayMethod.SingleSine, DegreeDayCutoff.None, [1, 2], [3, 4], 10, null, [2], new double[2]));
        Assert.Throws<ArgumentException>(() => HeatSum.Accumulate(DegreeDayMethod.SingleSine, DegreeDayCutoff.None, [1, 2], [3, 4], 10, null, [1, 0], new double[2]));
        Assert.Throws<ArgumentException>(() => HeatSum.Accumulate(DegreeDayMethod.SingleSine, DegreeDayCutoff.None, [1, 2], [3, 4], 10, null, [-1], new double[2]));
        Assert.Throws<ArgumentOutOfRangeException>(() => HeatSum.Accumulate(DegreeDayMethod.SingleSine, DegreeDayCutoff.None, [1], [3], 10, 9, [0], new double[1]));
    }

    [Fact]
    public void A_column_by_a_method_or_cutoff_without_a_name_is_refused()
    {
        ArgumentOutOfRangeException method = Assert.Throws<ArgumentOutOfRangeException>(
            () => HeatSum.Accumulate((DegreeDayMethod)9, DegreeDayCutoff.None, [1], [3], 10, null, [0], new double[1]));
        Assert.Equal("method", method.ParamName);
        foreach (DegreeDayMethod known in Enum.GetValues<DegreeDayMethod>())
        {
            ArgumentOutOfRangeException cutoff = Assert.Throws<ArgumentOutOfRangeException>(
                () => HeatSum.Accumulate(known, (DegreeDayCutoff)9, [1], [3], 10, null, [0], new double[1]));
            Assert.Equal("cutoff", cutoff.ParamName);
        }
    }

    [Fact]
    public void A_definition_whose_base_is_not_below_its_upper_threshold_cannot_be_summed()
    {
        HeatSumDefinition reversed = FromFirstOfMarch with { Base = Temperature.FromCelsius(12), Upper = Temperature.FromCelsius(11.5) };
        ArgumentOutOfRangeException refusal = Assert.Throws<ArgumentOutOfRangeException>(
            () => HeatSum.Column(SeriesOf.Alike(new DateOnly(2023, 3, 1), 1, 5, 15), reversed, Hemisphere.Northern, []));
        Assert.Contains("11.5", refusal.Message, StringComparison.Ordinal);
        Assert.Contains("12", refusal.Message, StringComparison.Ordinal);
    }
}
