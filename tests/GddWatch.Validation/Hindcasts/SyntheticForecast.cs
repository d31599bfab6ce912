using GddWatch.Agronomy.Chances;
using GddWatch.Agronomy.Weather;

namespace GddWatch.Validation.Hindcasts;

/// <summary>
/// A made-up forecast: the seven days as they really came, plus an error that grows with the days ahead. No forecast kept as issued was at hand for these stations, so it stands in for one and shows what the method makes of a
/// forecast of known quality, not how good a service is.
/// </summary>
internal static class SyntheticForecast
{
    /// <summary>
    /// The forecast issued on a day. Air: errors with the stated deviations of <see cref="ForecastErrors.Stated"/>, linked from day to day as a first-order autoregression by 0.8 at most. Soil: 0.35 °C times the root of the days ahead,
    /// as a random walk, or each day's error by itself. Rain as it came. Null where the days after are not all known.
    /// </summary>
    public static Forecast? IssuedOn(DateOnly day, DailySeries truth, int seed, bool isLinked)
    {
        // The errors of a known series, not secrets; the same for the same seed.
        var draws = new Random(seed);
        var builder = new DailySeriesBuilder();
        double airError = 0, soilError = 0, before = 0;
        for (int lead = 1; lead <= ForecastErrors.LongestLeadDays; lead++)
        {
            DateOnly ahead = day.AddDays(lead);
            if (!truth.Holds(ahead)) return null;
            int place = truth.IndexOf(ahead);
            double deviation = ForecastErrors.Stated.AirC[lead];
            double link = lead == 1 ? 0 : Math.Min(0.8, before / deviation);
            airError = (before > 0 ? link * deviation / before * airError : 0) + deviation * Math.Sqrt(1 - link * link) * Normal(draws);
            before = deviation;
            double step = 0.35 * Normal(draws);
            soilError = isLinked ? soilError + step : step * Math.Sqrt(lead);
            if (double.IsNaN(truth.MinimumAirC[place]) || double.IsNaN(truth.MaximumAirC[place])) return null;
            builder.Put(ahead, WeatherVariable.MinimumAirC, truth.MinimumAirC[place] + airError);
            builder.Put(ahead, WeatherVariable.MaximumAirC, truth.MaximumAirC[place] + airError);
            foreach (WeatherVariable variable in (WeatherVariable[])[WeatherVariable.Soil5CmC, WeatherVariable.Soil10CmC])
            {
                if (truth.Has(variable) && !double.IsNaN(truth.Column(variable)[place])) builder.Put(ahead, variable, truth.Column(variable)[place] + soilError);
            }

            if (truth.Has(WeatherVariable.PrecipitationMm) && !double.IsNaN(truth.Column(WeatherVariable.PrecipitationMm)[place])) builder.Put(ahead, WeatherVariable.PrecipitationMm, truth.Column(WeatherVariable.PrecipitationMm)[place]);
        }

        return new Forecast(day, new DateTimeOffset(day.ToDateTime(new TimeOnly(18, 0)), TimeSpan.Zero), builder.Build()!);
    }

    private static double Normal(Random draws) => MathNet.Numerics.Distributions.Normal.Sample(draws, 0, 1);
}
