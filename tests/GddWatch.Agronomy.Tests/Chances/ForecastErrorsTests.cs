using GddWatch.Agronomy.Chances;
using GddWatch.Agronomy.Weather;
using Xunit;

namespace GddWatch.Agronomy.Tests.Chances;

public sealed class ForecastErrorsTests
{
    [Fact]
    public void Until_enough_forecasts_were_kept_the_stated_errors_stand()
    {
        ForecastErrors errors = ForecastErrors.Learn(Kept(ForecastErrors.PairsNeeded - 1, 1), Some.SmoothYears(2024, 1));
        Assert.Equal(ForecastErrors.Stated.AirC, errors.AirC);
        Assert.Equal(0, errors.LearnedFrom);
    }

    [Fact]
    public void Errors_are_learned_by_days_ahead_from_the_forecasts_that_were_kept()
    {
        ForecastErrors errors = ForecastErrors.Learn(Kept(60, 0.5), Some.SmoothYears(2024, 1));
        // A forecast that is 0.5 °C too warm for each day ahead, the day itself right.
        for (int lead = 0; lead <= 7; lead++) Assert.Equal(0.5 * lead, errors.AirC[lead], 6);
        Assert.Equal(60 * 8, errors.LearnedFrom);
    }

    [Fact]
    public void Days_that_were_filled_teach_nothing()
    {
        DailySeries known = Some.SmoothYears(2024, 1);
        var marks = Enumerable.Repeat(Mark.Filled, known.Count).ToArray();
        DailySeries filled = known.WithAirTemperature(known.MinimumAirC.ToArray(), known.MaximumAirC.ToArray(), marks, marks);
        Assert.Equal(0, ForecastErrors.Learn(Kept(60, 0.5), filled).LearnedFrom);
    }

    [Fact]
    public void Drawn_errors_have_the_stated_size_and_grow_as_a_random_walk_where_they_grow_as_the_root_of_the_days()
    {
        var draws = new SeededDraws(3);
        double[][] errors = ForecastErrors.Draw(ForecastErrors.Stated.SoilC, [1, 2, 3, 4, 5, 6, 7], 2000, 0.8, ref draws);
        for (int day = 0; day < 7; day++) Assert.InRange(Math.Sqrt(errors.Average(row => row[day] * row[day])) / (0.35 * Math.Sqrt(day + 1)), 0.95, 1.05);
        // Steps of a random walk: variance 0.35² each, free of what was before (links up to 0.8; here the first two days).
        Assert.InRange(Math.Sqrt(errors.Average(row => Math.Pow(row[1] - row[0], 2))), 0.33, 0.37);
    }

    [Fact]
    public void A_forecast_without_error_is_drawn_as_it_is()
    {
        var draws = new SeededDraws(3);
        Assert.All(ForecastErrors.Draw([0, 0, 0], [1, 2], 5, 0.8, ref draws), row => Assert.All(row, error => Assert.Equal(0, error)));
    }

    [Fact]
    public void How_closely_the_errors_of_following_days_go_together_is_learned_too()
    {
        DailySeries known = Some.SmoothYears(2024, 1);
        // The same error on all days of a forecast, or one of its own on each: their correlations are 1, of which 0.95 is believed, and 0.
        var chance = new Random(7);
        double Throw() => chance.Next(2) == 0 ? -1 : 1;
        Assert.Equal(0.95, ForecastErrors.Learn(Kept(60, Throw, (error, _) => error), known).AirLink, 9);
        Assert.InRange(ForecastErrors.Learn(Kept(60, Throw, (_, anew) => anew), known).AirLink, 0, 0.12);
        Assert.Equal(ForecastErrors.Stated.AirLink, ForecastErrors.Learn(Kept(3, Throw, (error, _) => error), known).AirLink);
    }

    private static List<Forecast> Kept(int count, Func<double> chance, Func<double, double, double> error) => [.. Kept(count, 0).Select(forecast =>
    {
        double first = chance();
        double[] off = [.. Enumerable.Range(0, forecast.Days.Count).Select(_ => error(first, chance()))];
        return forecast with
        {
            Days = forecast.Days.WithAirTemperature(
                [.. off.Select((by, i) => forecast.Days.MinimumAirC[i] + by)], [.. off.Select((by, i) => forecast.Days.MaximumAirC[i] + by)], forecast.Days.MinimumMarks.ToArray(), forecast.Days.MaximumMarks.ToArray()),
        };
    })];

    /// <summary>Forecasts of the smooth year, each issued on another day of spring, too warm by so much for each day ahead.</summary>
    private static List<Forecast> Kept(int count, double warmerEachDayC)
    {
        var kept = new List<Forecast>();
        for (int i = 0; i < count; i++)
        {
            DateOnly issued = new DateOnly(2024, 3, 1).AddDays(i);
            var days = new DailySeriesBuilder();
            for (int lead = 0; lead <= 7; lead++)
            {
                DateOnly day = issued.AddDays(lead);
                double mean = Some.SmoothMeanC(day) + warmerEachDayC * lead;
                days.Put(day, WeatherVariable.MinimumAirC, mean - 6);
                days.Put(day, WeatherVariable.MaximumAirC, mean + 6);
            }

            kept.Add(new Forecast(issued, DateTimeOffset.UnixEpoch, days.Build()!));
        }

        return kept;
    }
}
