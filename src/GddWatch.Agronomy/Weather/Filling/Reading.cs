namespace GddWatch.Agronomy.Weather.Filling;

/// <summary>Tells what was read from what was put in or doubted: only readings fill holes, so that no filling rests on another.</summary>
internal static class Reading
{
    /// <summary>The temperature read on a day [°C]; NaN where there is none, where it is doubted or filled, and outside the series.</summary>
    public static double At(DailySeries series, WeatherVariable variable, int index)
    {
        if ((uint)index >= (uint)series.Count) return double.NaN;
        return MarksOf(series, variable)[index] <= Mark.Corrected ? series.Column(variable)[index] : double.NaN;
    }

    /// <summary>All readings of a temperature [°C], NaN where there is none.</summary>
    public static double[] All(DailySeries series, WeatherVariable variable)
    {
        double[] readings = series.Column(variable).ToArray();
        ReadOnlySpan<Mark> marks = MarksOf(series, variable);
        for (int i = 0; i < readings.Length; i++)
        {
            if (marks[i] > Mark.Corrected) readings[i] = double.NaN;
        }

        return readings;
    }

    /// <summary>The marks of one of the two temperatures.</summary>
    public static ReadOnlySpan<Mark> MarksOf(DailySeries series, WeatherVariable variable) =>
        variable == WeatherVariable.MinimumAirC ? series.MinimumMarks : series.MaximumMarks;

    /// <summary>Refuses what is neither the lowest nor the highest air temperature of a day.</summary>
    public static void DemandAirTemperature(WeatherVariable variable)
    {
        if (variable is WeatherVariable.MinimumAirC or WeatherVariable.MaximumAirC) return;
        throw new ArgumentOutOfRangeException(nameof(variable), variable, $"{variable} is not filled; allowed are the lowest and the highest air temperature.");
    }
}
