using System.Globalization;
using GddWatch.Agronomy.Weather;

namespace GddWatch.Agronomy.Tests.Soil;

/// <summary>A station of the US Climate Reference Network with its weather and measured soil.</summary>
/// <param name="Name">Its name in the files.</param>
/// <param name="Latitude">Latitude [°].</param>
/// <param name="Humid">Whether it has 600 mm of precipitation a year or more.</param>
/// <param name="Series">2010 to 2023.</param>
internal sealed record MeasuredStation(string Name, double Latitude, bool Humid, DailySeries Series)
{
    private const double Missing = -9998;

    /// <summary>Every station of ../shared/weather/uscrn-daily, read once. Skips the test where they are not there.</summary>
    public static MeasuredStation[] All => Read.Value;

    private static readonly Lazy<MeasuredStation[]> Read = new(() =>
    {
        string folder = SharedFiles.Find("weather/uscrn-daily");
        IEnumerable<string> stations = File.ReadLines(Path.Combine(folder, "stations.csv")).Skip(1);
        return [.. stations.AsParallel().AsOrdered().Select(line => Station(folder, line.Split(',')))];
    });

    private static MeasuredStation Station(string folder, string[] fields)
    {
        var builder = new DailySeriesBuilder();
        foreach (string year in Directory.GetDirectories(folder).Order())
        {
            string file = Path.Combine(year, $"CRND0103-{Path.GetFileName(year)}-{fields[0]}.txt");
            if (File.Exists(file)) AddYear(builder, file);
        }

        return new MeasuredStation(fields[0], double.Parse(fields[1], CultureInfo.InvariantCulture), fields[5] == "humid", builder.Build()!);
    }

    /// <summary>28 fields between spaces: 2 date, 6 maximum, 7 minimum, 10 precipitation, 11 solar radiation, 18 mean humidity, 24 soil at 5 cm, 25 at 10 cm (readme of the
    /// product, SEEN).</summary>
    private static void AddYear(DailySeriesBuilder builder, string file)
    {
        Span<Range> fields = stackalloc Range[28];
        foreach (string line in File.ReadLines(file))
        {
            ReadOnlySpan<char> text = line;
            if (text.Split(fields, ' ', StringSplitOptions.RemoveEmptyEntries) < 28) continue;
            DateOnly day = DateOnly.ParseExact(text[fields[1]], "yyyyMMdd", CultureInfo.InvariantCulture);
            double maximum = Number(text[fields[5]]);
            double minimum = Number(text[fields[6]]);
            if (minimum > maximum) minimum = maximum = double.NaN;
            builder.Put(day, WeatherVariable.MaximumAirC, maximum);
            builder.Put(day, WeatherVariable.MinimumAirC, minimum);
            builder.Put(day, WeatherVariable.PrecipitationMm, Number(text[fields[9]]));
            builder.Put(day, WeatherVariable.SolarRadiationMJ, Number(text[fields[10]]));
            builder.Put(day, WeatherVariable.RelativeHumidityPercent, Number(text[fields[17]]));
            builder.Put(day, WeatherVariable.Soil5CmC, Number(text[fields[23]]));
            builder.Put(day, WeatherVariable.Soil10CmC, Number(text[fields[24]]));
        }
    }

    private static double Number(ReadOnlySpan<char> text)
    {
        double value = double.Parse(text, CultureInfo.InvariantCulture);
        return value < Missing ? double.NaN : value;
    }
}
