using GddWatch.Agronomy.Weather;

namespace GddWatch.Agronomy.Tests.Weather.Checks;

/// <summary>Invented temperatures by chance, in tenths, some missing, some wild.</summary>
internal static class RandomTemperatures
{
    public static DailySeries Series(DateOnly first, int days, int seed, DailySeries? like = null)
    {
        Random chance = new(seed);
        DailySeriesBuilder builder = new();
        for (int i = 0; i < days; i++)
        {
            double middle = like is null ? 10 - (12 * Math.Cos(2 * Math.PI * i / 365.25)) + (6 * chance.NextDouble()) : like.MinimumAirC[i] + 5 + (2 * chance.NextDouble());
            if (chance.Next(60) == 0) middle += chance.Next(-20, 20);
            builder.Add(new DailyRecord { Day = first.AddDays(i) });
            if (chance.Next(30) != 0) builder.Put(first.AddDays(i), WeatherVariable.MinimumAirC, Math.Round(middle - 5, 1));
            if (chance.Next(30) != 0) builder.Put(first.AddDays(i), WeatherVariable.MaximumAirC, Math.Round(middle + 5, 1));
        }

        return builder.Build()!;
    }
}
