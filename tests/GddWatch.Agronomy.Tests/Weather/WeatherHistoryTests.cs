using CsCheck;
using GddWatch.Agronomy.Weather;
using GddWatch.Agronomy.Weather.Checks;
using GddWatch.Agronomy.Weather.Filling;
using Xunit;

namespace GddWatch.Agronomy.Tests.Weather;

public sealed class WeatherHistoryTests
{
    private static readonly DateOnly Start = new(2020, 1, 1);

    [Fact]
    public void A_leap_of_more_than_25_degrees_is_doubted_on_its_day_and_believed_once_the_next_day_is_like_it()
    {
        // Durre et al. 2010: a spike differs by 25 °C or more from both neighbours (SEEN); with one neighbour known nothing more can be said yet.
        DateOnly front = Start.AddDays(40);
        DailySeries series = Series(60, (day, _) => day >= front ? -28 : 0);
        WeatherHistory history = History(series);
        KnownWeather onTheDay = history.AsOf(front)!;
        Assert.Equal(Mark.Suspect, onTheDay.Series.QualityAt(40));
        Assert.Contains(onTheDay.Doubts, doubt => doubt is { Check: QualityCheck.Spike, ClearedOn: null });
        Assert.InRange(onTheDay.Series.MaximumAirC[40], 5, 30);
        KnownWeather nextDay = history.AsOf(front.AddDays(1))!;
        Assert.Empty(nextDay.Doubts);
        Assert.Equal(Mark.Measured, nextDay.Series.QualityAt(40));
        Assert.Equal(series.MaximumAirC[40], nextDay.Series.MaximumAirC[40]);
    }

    [Fact]
    public void A_value_that_stays_doubted_is_replaced_and_marked_and_the_next_day_fills_it_by_the_line()
    {
        DateOnly wrong = Start.AddDays(40);
        WeatherHistory history = History(Series(60, (day, _) => day == wrong ? 40 : 0));
        KnownWeather known = history.AsOf(wrong.AddDays(3))!;
        Assert.Equal(Mark.Suspect, known.Series.QualityAt(40));
        Assert.All(known.Fillings.Where(filling => filling.Day == wrong), filling => Assert.Equal(FillingRung.BetweenNeighbours, filling.Rung));
        Assert.Equal((known.Series.MaximumAirC[39] + known.Series.MaximumAirC[41]) / 2, known.Series.MaximumAirC[40], 9);
    }

    [Fact]
    public void What_is_known_on_a_day_never_depends_on_what_came_after_it() =>
        Gen.Int[0, 1_000_000].Sample(
            seed =>
            {
                DailySeries series = Spoilt(seed);
                Forecast[] forecasts = [.. Enumerable.Range(0, 10).Select(i => ForecastOn(series, series.LastDay.AddDays(-7 * i)))];
                NeighbourSeries[] near = [new("North", 30, Spoilt(seed + 1))];
                WeatherHistory whole = History(series, near, forecasts);
                Assert.NotEmpty(whole.Doubts);
                for (int back = 0; back < 90; back++)
                {
                    DateOnly day = series.LastDay.AddDays(-back);
                    KnownWeather expected = History(
                        series.Until(day)!, [.. near.Select(each => each with { Series = each.Series.Until(day)! })], [.. forecasts.Where(each => each.IssuedOn <= day)]).AsOf(day)!;
                    KnownWeather found = whole.AsOf(day)!;
                    Assert.Equal(expected.Doubts, found.Doubts);
                    Assert.Equal(expected.Fillings, found.Fillings);
                    Assert.Equal(expected.Forecast, found.Forecast);
                    Assert.True(expected.Series.MinimumAirC.SequenceEqual(found.Series.MinimumAirC) && expected.Series.MaximumAirC.SequenceEqual(found.Series.MaximumAirC));
                    Assert.True(expected.Series.MinimumMarks.SequenceEqual(found.Series.MinimumMarks) && expected.Series.MaximumMarks.SequenceEqual(found.Series.MaximumMarks));
                }
            },
            iter: 15,
            seed: "0000KXKkWK54");

    [Fact]
    public void A_forecast_serves_on_its_day_and_the_next_and_not_longer()
    {
        DailySeries series = Series(60, (_, _) => 0);
        WeatherHistory history = History(series, null, [ForecastOn(series, series.LastDay)]);
        Assert.Null(history.AsOf(series.LastDay.AddDays(-1))!.Forecast);
        Assert.NotNull(history.AsOf(series.LastDay)!.Forecast);
        Assert.NotNull(history.AsOf(series.LastDay.AddDays(1))!.Forecast);
        Assert.Null(history.AsOf(series.LastDay.AddDays(2))!.Forecast);
    }

    [Fact]
    public void A_doubted_reading_is_filled_by_another_feed_of_the_site_before_a_site_near_by()
    {
        DateOnly wrong = Start.AddDays(40);
        DailySeries series = Series(60, (day, _) => day == wrong ? 40 : 0);
        FillingNeighbour[] others = [new("North", Series(60, (_, _) => 1)), new("other feed", Series(60, (_, _) => -0.5), IsSameSite: true)];
        KnownWeather known = WeatherHistory.Of(series, QualityControl.DoubtsOf(series, []), others, []).AsOf(wrong.AddDays(2))!;
        Assert.All(known.Fillings.Where(filling => filling.Day == wrong), filling => Assert.Equal(FillingRung.SecondFeed, filling.Rung));
        Assert.Equal(Series(60, (_, _) => 0).MaximumAirC[40], known.Series.MaximumAirC[40], 9);
    }

    [Fact]
    public void What_is_doubted_at_a_site_fills_no_hole_elsewhere()
    {
        DateOnly wrong = Start.AddDays(40);
        DailySeries spoilt = Series(60, (day, _) => day == wrong ? 40 : 0);
        DailySeries believed = WeatherHistory.BelievedOnItsDay(spoilt, QualityControl.DoubtsOf(spoilt, []));
        Assert.Equal(double.NaN, believed.MaximumAirC[40]);
        Assert.Equal(spoilt.MaximumAirC[39], believed.MaximumAirC[39]);
    }

    private static WeatherHistory History(DailySeries series, NeighbourSeries[]? near = null, Forecast[]? forecasts = null) => WeatherHistory.Of(
        series,
        QualityControl.DoubtsOf(series, near ?? []),
        [.. (near ?? []).Select(each => new FillingNeighbour(each.Name, WeatherHistory.BelievedOnItsDay(each.Series, QualityControl.DoubtsOf(each.Series, []))))],
        forecasts ?? []);

    private static Forecast ForecastOn(DailySeries series, DateOnly day)
    {
        var builder = new DailySeriesBuilder();
        for (int lead = 0; lead < 7; lead++)
        {
            builder.Put(day.AddDays(lead), WeatherVariable.MinimumAirC, 5 + series.Count % 7 + lead, Mark.Forecast);
            builder.Put(day.AddDays(lead), WeatherVariable.MaximumAirC, 16 + lead, Mark.Forecast);
        }

        return new Forecast(day, new DateTimeOffset(day.ToDateTime(new TimeOnly(12, 0)), TimeSpan.Zero), builder.Build()!);
    }

    private static DailySeries Series(int days, Func<DateOnly, int, double> anomalyC)
    {
        var builder = new DailySeriesBuilder();
        for (int i = 0; i < days; i++)
        {
            DateOnly day = Start.AddDays(i);
            double meanC = 14 + 3 * Math.Sin(i * 0.7) + anomalyC(day, i);
            builder.Put(day, WeatherVariable.MinimumAirC, meanC - 5);
            builder.Put(day, WeatherVariable.MaximumAirC, meanC + 5);
        }

        return builder.Build()!;
    }

    /// <summary>Two years of made-up weather with holes, leaps that stay, single wrong values and a thermometer that sticks.</summary>
    private static DailySeries Spoilt(int seed)
    {
        var random = new Random(seed);
        var builder = new DailySeriesBuilder();
        int stuckFrom = 600 + random.Next(80);
        for (int i = 0; i < 730; i++)
        {
            DateOnly day = Start.AddDays(i);
            double meanC = 11 - 12 * Math.Cos(2 * Math.PI * i / 365) + 8 * (random.NextDouble() - 0.5);
            if (random.Next(25) == 0) meanC += random.Next(2) == 0 ? 32 : -32;
            double lowC = i >= stuckFrom && i < stuckFrom + 25 ? 7.7 : Math.Round(meanC - 4 - 2 * random.NextDouble(), 1);
            double highC = Math.Round(Math.Max(lowC + 1, meanC + 4 + 2 * random.NextDouble()), 1);
            if (random.Next(15) != 0) builder.Put(day, WeatherVariable.MinimumAirC, lowC);
            if (random.Next(15) != 0) builder.Put(day, WeatherVariable.MaximumAirC, highC);
        }

        return builder.Build()!;
    }
}
