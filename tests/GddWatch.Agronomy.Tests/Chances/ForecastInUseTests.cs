using GddWatch.Agronomy.Chances;
using GddWatch.Agronomy.Weather;
using Xunit;

namespace GddWatch.Agronomy.Tests.Chances;

public sealed class ForecastInUseTests
{
    private static readonly DateOnly Today = new(2024, 4, 2);

    [Fact]
    public void No_forecast_is_named()
    {
        ForecastInUse use = ForecastInUse.Of(Known([]), Today);
        Assert.Equal(0, use.Count);
        Assert.Contains("There is no forecast", Assert.Single(use.Remarks));
    }

    [Fact]
    public void A_stale_forecast_is_named_and_not_used()
    {
        ForecastInUse use = ForecastInUse.Of(Known([Issued(Today.AddDays(-5))], fresh: false), Today);
        Assert.Equal(0, use.Count);
        Assert.Contains("The last forecast is from Thursday 28 March 2024, too old", Assert.Single(use.Remarks));
    }

    [Fact]
    public void A_forecast_counts_from_the_day_after_the_last_known_one()
    {
        ForecastInUse use = ForecastInUse.Of(Known([Issued(Today)]), Today);
        Assert.Equal(7, use.Count);
        Assert.Equal(Today.AddDays(1), use.Days!.DayAt(use.First));
        Assert.Empty(use.Remarks);
    }

    [Fact]
    public void A_forecast_that_lacks_a_day_is_used_up_to_it_and_the_day_is_named()
    {
        ForecastInUse use = ForecastInUse.Of(Known([Issued(Today, without: 3)]), Today);
        Assert.Equal(2, use.Count);
        Assert.Contains("lacks Friday 5 April 2024", Assert.Single(use.Remarks));
    }

    [Fact]
    public void An_impossible_day_ends_it_too()
    {
        ForecastInUse use = ForecastInUse.Of(Known([Issued(Today, turned: 2)]), Today);
        Assert.Equal(1, use.Count);
        Assert.Contains("gives an impossible temperature for Thursday 4 April 2024", Assert.Single(use.Remarks));
    }

    [Fact]
    public void A_forecast_that_contradicts_the_one_before_is_named_and_trusted_less()
    {
        Forecast yesterday = Issued(Today.AddDays(-1)), now = Issued(Today, warmerC: 12);
        ForecastInUse use = ForecastInUse.Of(Known([yesterday, now]), Today);
        Assert.Contains("contradicts the one of Monday 1 April 2024", Assert.Single(use.Remarks));
        Assert.All(use.Errors.AirC.Zip(ForecastErrors.Stated.AirC), pair => Assert.True(pair.First > pair.Second));
        Assert.Empty(ForecastInUse.Of(Known([yesterday, Issued(Today, warmerC: 2)]), Today).Remarks);
    }

    [Fact]
    public void A_forecast_that_says_nothing_of_the_days_ahead_is_named()
    {
        ForecastInUse use = ForecastInUse.Of(Known([Issued(Today, days: 0)]), Today);
        Assert.Equal(0, use.Count);
        Assert.Single(use.Remarks);
    }

    private static KnownWeather Known(Forecast[] issued, bool fresh = true) =>
        KnownWeather.Undoubted(Some.SmoothYears(2023, 2).Until(Today)!) with { Forecast = fresh ? issued.LastOrDefault() : null, Issued = issued };

    private static Forecast Issued(DateOnly on, double warmerC = 0, int? without = null, int? turned = null, int days = 7)
    {
        var builder = new DailySeriesBuilder();
        for (int lead = 0; lead <= days; lead++)
        {
            if (lead == without) continue;
            DateOnly day = on.AddDays(lead);
            double mean = Some.SmoothMeanC(day) + warmerC;
            builder.Put(day, WeatherVariable.MinimumAirC, lead == turned ? mean + 8 : mean - 6);
            builder.Put(day, WeatherVariable.MaximumAirC, mean + 6);
        }

        return new Forecast(on, DateTimeOffset.UnixEpoch, builder.Build()!);
    }
}
