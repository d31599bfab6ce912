using System.Globalization;
using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Weather;

namespace GddWatch.Agronomy.Soil;

/// <summary>Refusals that every soil temperature model shares: each message carries the name, the day, the value found and the values
/// allowed.</summary>
internal static class SoilDemand
{
    public const double ShallowestCm = 2;
    public const double DeepestCm = 20;

    private const string FiniteOrMissing = "a finite number, or NaN for a missing one";

    /// <summary>Refuses a series, place or depth that no model can use. Missing values (NaN) are not refused.</summary>
    public static void Input(
        DailySeries series, double latitudeDegrees, Depth depth, ReadOnlySpan<double> meanC, ReadOnlySpan<double> deviationC)
    {
        Weather(series, latitudeDegrees);
        DepthOfTurf(depth);
        Room(meanC, series.Count, nameof(meanC));
        Room(deviationC, series.Count, nameof(deviationC));
    }

    /// <summary>Refuses a series or place that no model can use. Missing values (NaN) are not refused.</summary>
    public static void Weather(DailySeries series, double latitudeDegrees)
    {
        ArgumentNullException.ThrowIfNull(series);
        Latitude(latitudeDegrees);
        Air(series);
        Precipitation(series);
    }

    public static double Latitude(double latitudeDegrees) => Demand.Within(latitudeDegrees, -90, 90, "latitude [°]");

    public static double DepthOfTurf(Depth depth) => Demand.Within(depth.Centimetres, ShallowestCm, DeepestCm, "depth [cm]");

    /// <summary>Refuses a measured temperature that no thermometer can show.</summary>
    public static double Measured(DateOnly day, double soilC) =>
        double.IsFinite(soilC) ? soilC : throw Refuse("measured soil temperature", "[°C]", day, soilC, FiniteOrMissing);

    private static void Room(ReadOnlySpan<double> column, int days, string name)
    {
        if (column.Length != days) throw new ArgumentException($"{name} has room for {column.Length} days; the series has {days}.", name);
    }

    private static void Air(DailySeries series)
    {
        ReadOnlySpan<double> minimum = series.MinimumAirC;
        ReadOnlySpan<double> maximum = series.MaximumAirC;
        for (int i = 0; i < minimum.Length; i++)
        {
            if (!(minimum[i] > maximum[i]) && !double.IsInfinity(minimum[i]) && !double.IsInfinity(maximum[i])) continue;
            if (double.IsInfinity(minimum[i])) throw Refuse("minimum temperature", "[°C]", series.DayAt(i), minimum[i], FiniteOrMissing);
            if (double.IsInfinity(maximum[i])) throw Refuse("maximum temperature", "[°C]", series.DayAt(i), maximum[i], FiniteOrMissing);
            throw Refuse("minimum temperature", "[°C]", series.DayAt(i), minimum[i], $"at most the day's maximum of {Show(maximum[i])}");
        }
    }

    private static void Precipitation(DailySeries series)
    {
        ReadOnlySpan<double> rain = series.Column(WeatherVariable.PrecipitationMm);
        for (int i = 0; i < rain.Length; i++)
        {
            if (!(rain[i] < 0) && !double.IsInfinity(rain[i])) continue;
            throw Refuse("precipitation", "[mm]", series.DayAt(i), rain[i], "0 or more, or NaN for a missing one");
        }
    }

    private static ArgumentOutOfRangeException Refuse(string name, string unit, DateOnly day, double value, string allowed) =>
        new(name, value, $"{name} of {day:yyyy-MM-dd} {unit} was {Show(value)}; allowed is {allowed}.");

    private static string Show(double value) => value.ToString("R", CultureInfo.InvariantCulture);
}
