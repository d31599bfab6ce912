using CsCheck;
using GddWatch.Agronomy.Weather;
using GddWatch.Agronomy.Weather.Checks;
using Xunit;

namespace GddWatch.Agronomy.Tests.Weather.Checks;

/// <summary>The published thresholds (Durre et al. 2010, SEEN in an open implementation), from either side, and what is known when.</summary>
public sealed class QualityControlTests
{
    private static readonly DateOnly First = new(2024, 5, 2);

    [Fact]
    public void A_value_25_degrees_from_both_neighbours_is_doubted_and_one_24_from_them_is_not()
    {
        Doubt doubt = Assert.Single(Of([10, 36, 9]));
        Assert.Equal((First.AddDays(1), 36.0, QualityCheck.Spike, First.AddDays(1), null), (doubt.Day, doubt.Value, doubt.Check, doubt.KnownFrom, doubt.ClearedOn));
        Assert.Equal("The maximum of Friday 3 May 2024, 36 °C, is 26 °C above that of Thursday 2 May 2024, 10 °C.", doubt.Why);
        Assert.Empty(Of([10, 34, 10]));
    }

    [Fact]
    public void A_jump_that_the_next_day_does_not_confirm_is_doubted_for_one_day()
    {
        Doubt doubt = Assert.Single(Of([10, 35.5, 30]));
        Assert.Equal(First.AddDays(2), doubt.ClearedOn);
        Assert.True(doubt.HoldsOn(First.AddDays(1)));
        Assert.False(doubt.HoldsOn(First));
        Assert.False(doubt.HoldsOn(First.AddDays(2)));
        Assert.Null(Assert.Single(Of([10, 36, double.NaN, 30])).ClearedOn);
    }

    [Fact]
    public void Twenty_equal_values_are_all_doubted_from_the_twentieth_on_and_nineteen_are_not()
    {
        double[] equal = [5, .. Enumerable.Repeat(12.5, 21), 6];
        IReadOnlyList<Doubt> doubts = Of(equal);

        Assert.Equal(21, doubts.Count);
        Assert.All(doubts.Take(20), doubt => Assert.Equal((QualityCheck.Streak, First.AddDays(20)), (doubt.Check, doubt.KnownFrom)));
        Assert.Equal(First.AddDays(21), doubts[20].KnownFrom);
        Assert.Empty(Of([5, .. Enumerable.Repeat(12.5, 19), 6]));
    }

    [Theory]
    [InlineData(0.0, true)]
    [InlineData(-17.8, true)]
    [InlineData(-160.0 / 9.0, true)]
    [InlineData(-17.7, false)]
    [InlineData(1.0, false)]
    public void A_day_with_both_extremes_at_a_zero_of_either_scale_is_doubted(double bothC, bool isDoubted) =>
        Assert.Equal(isDoubted ? 2 : 0, QualityControl.DoubtsOf(Series([bothC], [bothC]), []).Count(doubt => doubt.Check == QualityCheck.Naught));

    [Theory]
    [InlineData(57.7, 0)]
    [InlineData(57.8, 1)]
    public void Warmer_than_ever_on_earth_is_doubted(double maximumC, int count) =>
        Assert.Equal(count, QualityControl.DoubtsOf(Series([30], [maximumC]), []).Count(doubt => doubt.Check == QualityCheck.Bounds));

    [Fact]
    public void A_maximum_below_the_minimum_doubts_both()
    {
        IReadOnlyList<Doubt> doubts = QualityControl.DoubtsOf(Series([10.1], [10]), []);

        Assert.Equal([WeatherVariable.MinimumAirC, WeatherVariable.MaximumAirC], doubts.Select(doubt => doubt.Variable));
        Assert.All(doubts, doubt => Assert.Equal(QualityCheck.Internal, doubt.Check));
    }

    [Fact]
    public void A_maximum_40_degrees_above_the_minima_of_three_days_is_doubted_and_cleared_where_the_next_day_is_nearer()
    {
        IReadOnlyList<Doubt> stays = QualityControl.DoubtsOf(Series([0, 0, 0], [22, 41, 22]), []);
        IReadOnlyList<Doubt> cleared = QualityControl.DoubtsOf(Series([0, 0, 5], [22, 41, 22]), []);

        Assert.Equal([null, null], stays.Select(doubt => doubt.ClearedOn));
        Assert.Equal([First.AddDays(2), First.AddDays(2)], cleared.Select(doubt => doubt.ClearedOn!.Value));
        Assert.All(stays.Concat(cleared), doubt => Assert.Equal((QualityCheck.LaggedRange, First.AddDays(1)), (doubt.Check, doubt.KnownFrom)));
        Assert.Empty(QualityControl.DoubtsOf(Series([2, 0, 0], [22, 41, 22]), []));
    }

    [Fact]
    public void A_month_that_repeats_the_one_of_another_year_is_doubted_with_it_from_its_last_day_on()
    {
        DailySeries series = Climate(2, (day, c) => day is { Year: 2021, Month: 4 } ? Noise(day.AddYears(-1)) : c);
        IReadOnlyList<Doubt> doubts = QualityControl.DoubtsOf(series, []);

        Assert.Equal(120, doubts.Count);
        Assert.All(doubts, doubt => Assert.Equal((QualityCheck.Duplicate, new DateOnly(2021, 4, 30), 4), (doubt.Check, doubt.KnownFrom, doubt.Day.Month)));
        Assert.Empty(QualityControl.DoubtsOf(Climate(2, (_, c) => c), []));
    }

    [Fact]
    public void Ten_days_of_a_month_without_a_range_doubt_the_month()
    {
        double[] minimumC = [.. Enumerable.Range(1, 15).Select(i => (double)i)];
        double[] maximumC = [.. Enumerable.Range(1, 15).Select(i => i > 3 ? i : i + 8.0)];
        Assert.All(QualityControl.DoubtsOf(Series(minimumC, maximumC), []).Take(26), doubt => Assert.Equal((QualityCheck.Duplicate, First.AddDays(12)), (doubt.Check, doubt.KnownFrom)));
        Assert.Empty(QualityControl.DoubtsOf(Series(minimumC[..12], maximumC[..12]), []));
    }

    // Of science: a gap of 10.0 °C from the next value is doubted, one of 9.9 is not.
    [Theory]
    [InlineData(10.0, QualityCheck.Gap)]
    [InlineData(9.9, null)]
    public void Apart_from_all_others_of_the_month_in_ten_earlier_years_is_a_gap(double aboveHighestC, QualityCheck? check)
    {
        double highest = Enumerable.Range(2020, 10).SelectMany(year => Enumerable.Range(1, 31).Select(day => Noise(new DateOnly(year, 7, day)) + 6)).Max();
        DateOnly odd = new(2030, 7, 10);
        DailySeries series = Climate(11, (day, c) => day == odd ? highest + aboveHighestC - 6 : c);

        Assert.Equal(check, QualityControl.DoubtsOf(series, []).FirstOrDefault(doubt => doubt.Day == odd && doubt.Variable == WeatherVariable.MaximumAirC && doubt.Check == QualityCheck.Gap)?.Check);
    }

    [Fact]
    public void Nine_earlier_years_do_not_judge_by_the_climate()
    {
        DateOnly odd = new(2029, 7, 10);
        IReadOnlyList<Doubt> doubts = QualityControl.DoubtsOf(Climate(10, (day, c) => day == odd ? c - 22 : c), []);
        Assert.DoesNotContain(doubts, doubt => doubt.Check is QualityCheck.Gap or QualityCheck.ClimatologicalOutlier or QualityCheck.Megaconsistency);
        DateOnly later = new(2031, 7, 10);
        Assert.Contains(QualityControl.DoubtsOf(Climate(12, (day, c) => day == later ? c - 22 : c), []), doubt => doubt.Day == later && doubt.Check <= QualityCheck.ClimatologicalOutlier);
    }

    [Fact]
    public void A_value_far_from_three_neighbours_is_doubted_and_not_with_two()
    {
        DateOnly odd = new(2020, 7, 10);
        DailySeries site = Climate(1, (day, c) => day == odd ? c + 15 : c);
        NeighbourSeries[] neighbours = [.. Enumerable.Range(1, 3).Select(i => new NeighbourSeries($"n{i}", 20 * i, Climate(1, (_, c) => c + i)))];

        Doubt[] doubts = [.. QualityControl.DoubtsOf(site, neighbours).Where(doubt => doubt.ClearedOn is null)];
        Assert.Equal([odd, odd], doubts.Select(doubt => doubt.Day));
        Assert.All(doubts, doubt => Assert.Equal(QualityCheck.SpatialRegression, doubt.Check));
        Assert.Empty(QualityControl.DoubtsOf(site, neighbours[..2]));
        Assert.Empty(QualityControl.DoubtsOf(site, [neighbours[0], neighbours[1], neighbours[2] with { DistanceKm = 76 }]));
    }

    [Fact]
    public void Filled_and_forecast_values_are_not_judged()
    {
        DailySeries series = Series([10], [5]).WithAirTemperature([10], [5], [Mark.Filled], [Mark.Measured]);
        Assert.Empty(QualityControl.DoubtsOf(series, []));
    }

    // The law: what is doubted on a day is the same whether later days are known or not. Errors of every kind are strewn over eleven years.
    [Fact]
    public void What_is_doubted_on_a_day_does_not_depend_on_later_days() =>
        Gen.Select(Gen.Int[0, 4000], Gen.Int[0, 9], Gen.Double[-60, 60]).Array[40].Sample(
            errors =>
            {
                Dictionary<int, double> wrong = [];
                foreach ((int at, int kind, double c) in errors)
                {
                    for (int i = 0; i < (kind == 0 ? 25 : kind == 1 ? 2 : 1); i++) wrong[at + i] = kind == 2 ? double.NaN : c;
                }

                DailySeries series = Climate(11, (day, c) => wrong.TryGetValue(day.DayNumber - new DateOnly(2020, 1, 1).DayNumber, out double bad) ? bad : c);
                NeighbourSeries[] neighbours = [.. Enumerable.Range(1, 3).Select(i => new NeighbourSeries($"n{i}", 20 * i, Climate(11, (_, c) => c + i)))];
                IReadOnlyList<Doubt> whole = QualityControl.DoubtsOf(series, neighbours);
                Assert.NotEmpty(whole);
                foreach ((int at, _, _) in errors.Take(8))
                {
                    for (int later = 0; later < 2; later++)
                    {
                        DateOnly day = series.DayAt(Math.Min(at + later, series.Count - 1));
                        Assert.Equal(HeldOn(whole, day), HeldOn(QualityControl.DoubtsOf(series.Until(day)!, neighbours), day));
                    }
                }
            },
            iter: 8,
            seed: "0000KXKkWK54",
            threads: 1);

    private static (DateOnly, WeatherVariable, QualityCheck, DateOnly, string)[] HeldOn(IReadOnlyList<Doubt> doubts, DateOnly day) =>
        [.. doubts.Where(doubt => doubt.HoldsOn(day)).Select(doubt => (doubt.Day, doubt.Variable, doubt.Check, doubt.KnownFrom, doubt.Why))];

    private static IReadOnlyList<Doubt> Of(double[] maximumC) => QualityControl.DoubtsOf(Series([.. maximumC.Select((c, i) => i % 2 - 5.0)], maximumC), []);

    private static DailySeries Series(double[] minimumC, double[] maximumC)
    {
        DailySeriesBuilder builder = new();
        for (int i = 0; i < minimumC.Length; i++)
        {
            builder.Put(First.AddDays(i), WeatherVariable.MinimumAirC, minimumC[i]);
            builder.Put(First.AddDays(i), WeatherVariable.MaximumAirC, maximumC[i]);
        }

        return builder.Build()!;
    }

    private static DailySeries Climate(int years, Func<DateOnly, double, double> change)
    {
        DailySeriesBuilder builder = new();
        for (DateOnly day = new(2020, 1, 1); day.Year < 2020 + years; day = day.AddDays(1))
        {
            double mean = change(day, Noise(day));
            builder.Put(day, WeatherVariable.MinimumAirC, mean - 6);
            builder.Put(day, WeatherVariable.MaximumAirC, mean + 6);
        }

        return builder.Build()!;
    }

    // An invented climate: a smooth year and a departure of −3 to 3 °C that no two days share.
    private static double Noise(DateOnly day) => Some.SmoothMeanC(day) + (3 * Math.Sin(day.DayNumber * 1.7));
}
