using GddWatch.Agronomy.Heat;
using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Weather;
using Xunit;

namespace GddWatch.Agronomy.Tests.Heat;

/// <summary>Sums that start on the first warm days after a date. Expected values are worked by hand from the definition.</summary>
public class BiofixTests
{
    private static readonly HeatSumDefinition AfterThreeDaysAtTen = new(
        Temperature.FromCelsius(5),
        null,
        DegreeDayMethod.SimpleAverage,
        DegreeDayCutoff.None,
        AnnualDay.Of(1, 3),
        Biofix: new BiofixCondition(3, Temperature.FromCelsius(10)));

    [Fact]
    public void The_sum_stands_at_zero_until_the_mean_passes_and_counts_from_that_day()
    {
        // Three-day means from 3 January on: 6, 8, 10, 12.
        HeatSums sums = Sums([6, 6, 6, 12, 12, 12]);
        Assert.Equal([double.NaN, double.NaN, 0, 0, 7, 14], sums.CelsiusDays);
        Assert.Equal([new HeatSumSeason(new DateOnly(2023, 1, 3), new DateOnly(2023, 1, 5))], sums.Seasons);
    }

    [Fact]
    public void A_mean_that_is_past_on_the_start_date_counts_from_it() =>
        Assert.Equal([double.NaN, double.NaN, 5, 10], Sums([10, 10, 10, 10]).CelsiusDays);

    [Fact]
    public void Warm_days_before_the_start_date_do_not_start_the_sum() =>
        Assert.Equal([double.NaN, double.NaN, double.NaN, double.NaN, 0, 0], Sums([20, 20, 20, 0, 0, 0], new DateOnly(2022, 12, 30)).CelsiusDays);

    [Fact]
    public void A_later_cold_spell_does_not_stop_what_has_started() =>
        Assert.Equal([double.NaN, double.NaN, 5, 5, 5, 6], Sums([10, 10, 10, 0, 0, 6]).CelsiusDays);

    [Fact]
    public void A_year_that_is_never_warm_enough_stays_at_zero_and_says_that_it_counts_from_no_day()
    {
        HeatSums sums = Sums([6, 6, 6, 6]);
        Assert.Equal([double.NaN, double.NaN, 0, 0], sums.CelsiusDays);
        Assert.Equal([new HeatSumSeason(new DateOnly(2023, 1, 3), null)], sums.Seasons);
    }

    [Fact]
    public void A_missing_day_while_waiting_hides_the_biofix_and_so_the_years_sum()
    {
        HeatSums sums = Sums([6, 6, 6, double.NaN, 12, 12, 12, 12]);
        Assert.Equal([double.NaN, double.NaN, 0, double.NaN, double.NaN, double.NaN, double.NaN, double.NaN], sums.CelsiusDays);
        Assert.Null(Assert.Single(sums.Seasons).CountsFrom);
    }

    [Fact]
    public void A_series_that_begins_too_late_for_the_first_mean_has_no_sum_that_year() =>
        Assert.All(Sums([12, 12, 12, 12], new DateOnly(2023, 1, 2)).CelsiusDays, sum => Assert.True(double.IsNaN(sum)));

    [Fact]
    public void The_next_year_waits_again_and_is_not_harmed_by_the_year_before()
    {
        var middles = new double[3 * 365];
        Array.Fill(middles, 6);
        DateOnly first = new(2022, 1, 1);
        middles[100] = double.NaN;
        int warm = new DateOnly(2024, 2, 1).DayNumber - first.DayNumber;
        middles.AsSpan(warm).Fill(10);
        HeatSums sums = Sums(middles, first);
        Assert.Equal(
            [
                new HeatSumSeason(new DateOnly(2022, 1, 3), null),
                new HeatSumSeason(new DateOnly(2023, 1, 3), null),
                new HeatSumSeason(new DateOnly(2024, 1, 3), new DateOnly(2024, 2, 3)),
            ],
            sums.Seasons);
        Assert.Equal(0.0, sums.CelsiusDays[2 * 365 + 1]);
        Assert.Equal([0, 0, 5, 10], sums.CelsiusDays[warm..(warm + 4)]);
    }

    [Fact]
    public void A_soil_sum_waits_for_the_air()
    {
        HeatSumDefinition soil = AfterThreeDaysAtTen with { SoilDepth = Depth.FromCentimetres(5) };
        DailySeries series = Series([6, 6, 6, 12, 12], new DateOnly(2023, 1, 1));
        Assert.Equal([double.NaN, double.NaN, 0, 0, 4], HeatSum.Column(series, soil, Hemisphere.Northern, [9, 9, 9, 9, 9]));
    }

    [Fact]
    public void A_double_sum_that_waits_is_not_provisional()
    {
        HeatSumDefinition doubled = AfterThreeDaysAtTen with { Method = DegreeDayMethod.DoubleSine };
        Assert.False(HeatSum.Over(Series([6, 6, 6, 6], new DateOnly(2023, 1, 1)), doubled, Hemisphere.Northern, []).LastDayIsProvisional);
        Assert.True(HeatSum.Over(Series([6, 6, 24, 6], new DateOnly(2023, 1, 1)), doubled, Hemisphere.Northern, []).LastDayIsProvisional);
    }

    [Fact]
    public void A_mean_over_no_day_is_refused() =>
        Assert.Contains("was 0", Assert.Throws<ArgumentOutOfRangeException>(() => new BiofixCondition(0, default)).Message, StringComparison.Ordinal);

    [Fact]
    public void Definitions_with_different_biofixes_are_different_sums()
    {
        Assert.NotEqual(AfterThreeDaysAtTen, AfterThreeDaysAtTen with { Biofix = null });
        Assert.NotEqual(AfterThreeDaysAtTen, AfterThreeDaysAtTen with { Biofix = new BiofixCondition(4, Temperature.FromCelsius(10)) });
        Assert.Equal(AfterThreeDaysAtTen, AfterThreeDaysAtTen with { Biofix = new BiofixCondition(3, Temperature.FromCelsius(10)) });
    }

    private static HeatSums Sums(double[] middlesC, DateOnly? firstDay = null) =>
        HeatSum.Over(Series(middlesC, firstDay ?? new DateOnly(2023, 1, 1)), AfterThreeDaysAtTen, Hemisphere.Northern, []);

    private static DailySeries Series(double[] middlesC, DateOnly firstDay) =>
        SeriesOf.Days(firstDay, [.. middlesC.Select(middle => middle - 3)], [.. middlesC.Select(middle => middle + 3)]);
}
