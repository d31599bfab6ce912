using GddWatch.Agronomy.Weather;

namespace GddWatch.Validation.Weather;

/// <summary>Collects the days of one station from any reader.</summary>
internal sealed class StationBuilder
{
    private readonly DailySeriesBuilder withRain = new();
    private readonly DailySeriesBuilder airOnly = new();
    private readonly Dictionary<int, Dictionary<DateOnly, double>> soil = [];

    /// <summary>Makes the series reach over a span, whether or not the span's days are known.</summary>
    public void Reach(DateOnly first, DateOnly last)
    {
        foreach (DailySeriesBuilder builder in (DailySeriesBuilder[])[withRain, airOnly])
        {
            builder.Add(new DailyRecord { Day = first });
            builder.Add(new DailyRecord { Day = last });
        }
    }

    /// <summary>Puts in a day. A minimum above its maximum is a fault of the file: both are left out.</summary>
    public void Put(DateOnly day, double minimumC, double maximumC, double rainMm)
    {
        if (minimumC <= maximumC)
        {
            foreach (DailySeriesBuilder builder in (DailySeriesBuilder[])[withRain, airOnly])
            {
                builder.Put(day, WeatherVariable.MinimumAirC, minimumC);
                builder.Put(day, WeatherVariable.MaximumAirC, maximumC);
            }
        }

        if (!double.IsNaN(rainMm)) withRain.Put(day, WeatherVariable.PrecipitationMm, rainMm);
    }

    /// <summary>Puts in a value that no model uses and that is looked at beside them; NaN is passed over.</summary>
    public void PutBeside(DateOnly day, WeatherVariable variable, double value)
    {
        if (!double.IsNaN(value)) withRain.Put(day, variable, value);
    }

    /// <summary>Puts in a measured soil temperature [°C] at a depth [cm]; NaN is passed over.</summary>
    public void PutSoil(DateOnly day, int depthCm, double soilC)
    {
        if (double.IsNaN(soilC)) return;
        if (!soil.TryGetValue(depthCm, out Dictionary<DateOnly, double>? days)) soil[depthCm] = days = [];
        days[day] = soilC;
    }

    public MeasuredStation Build(string name, double latitudeDegrees, bool isHumid)
    {
        DailySeries series = withRain.Build() ?? throw new InvalidDataException($"{name}: no day was read.");
        DailySeries air = airOnly.Build() ?? throw new InvalidDataException($"{name}: no day with air temperature was read.");
        Dictionary<int, double[]> measured = [];
        foreach ((int depthCm, Dictionary<DateOnly, double> days) in soil)
        {
            measured[depthCm] = [.. Enumerable.Range(0, series.Count).Select(i => days.GetValueOrDefault(series.DayAt(i), double.NaN))];
        }

        return new MeasuredStation(name, latitudeDegrees, isHumid, series, air, measured);
    }
}
