using System.Globalization;
using GddWatch.Agronomy.Weather;

namespace GddWatch.Validation.Weather;

/// <summary>
/// Reads the daily files of the US Climate Reference Network (product CRND0103): 28 fields parted by spaces, listed in the product's readme.
/// </summary>
internal static class UscrnStations
{
    private const int FieldCount = 28;
    private const int NeededDepthCm = 5;
    private const int FewestStations = 10;
    private const int DayField = 1;
    private const int MaximumField = 5;
    private const int MinimumField = 6;
    private const int RainField = 9;
    private const int SunField = 10;
    private const int HumidityField = 17;
    private static readonly (int DepthCm, int Field)[] SoilFields = [(5, 23), (10, 24), (20, 25)];

    /// <summary>Below this every value of these fields is a mark for "missing" (-9999, in older files -99).</summary>
    private const double LowestPossible = -98;

    /// <summary>Reads stations.csv and each station's yearly files; every series spans the same years, known or not.</summary>
    public static IReadOnlyList<MeasuredStation> Read(string folder)
    {
        string list = Path.Combine(folder, "stations.csv");
        if (!File.Exists(list)) throw new InvalidDataException($"{list} is not there. Give the weather folder that holds uscrn-daily.");
        string[] years = [.. Directory.GetDirectories(folder).Order(StringComparer.Ordinal)];
        if (years.Length == 0) throw new InvalidDataException($"{folder} holds no folders of yearly files.");
        DateOnly first = new(int.Parse(Path.GetFileName(years[0]), CultureInfo.InvariantCulture), 1, 1);
        DateOnly last = new(int.Parse(Path.GetFileName(years[^1]), CultureInfo.InvariantCulture), 12, 31);

        List<MeasuredStation> stations = [];
        DataLines.EachRow(list, cell =>
        {
            StationBuilder builder = new();
            builder.Reach(first, last);
            foreach (string year in years)
            {
                string file = Path.Combine(year, $"CRND0103-{Path.GetFileName(year)}-{cell("station")}.txt");
                if (File.Exists(file)) ReadYear(file, builder);
            }

            double latitudeDegrees = double.Parse(cell("latitude"), CultureInfo.InvariantCulture);
            stations.Add(builder.Build(cell("station"), latitudeDegrees, cell("climate") == "humid"));
        });

        MeasuredStation[] measured = [.. stations.Where(station => station.MeasuredC.ContainsKey(NeededDepthCm))];
        return measured.Length >= FewestStations
            ? measured
            : throw new InvalidDataException(
                $"{folder}: {measured.Length} stations have soil temperature at {NeededDepthCm} cm; {FewestStations} are needed, so that some can be left out.");
    }

    private static void ReadYear(string file, StationBuilder builder) =>
        DataLines.Each(file, line => line.Split(' ', StringSplitOptions.RemoveEmptyEntries), fields =>
        {
            if (fields.Length != FieldCount) throw new FormatException($"{fields.Length} fields were found where {FieldCount} are expected.");
            DateOnly day = DateOnly.ParseExact(fields[DayField], "yyyyMMdd", CultureInfo.InvariantCulture);
            builder.Put(day, Value(fields[MinimumField]), Value(fields[MaximumField]), Value(fields[RainField]));
            builder.PutBeside(day, WeatherVariable.SolarRadiationMJ, Value(fields[SunField]));
            builder.PutBeside(day, WeatherVariable.RelativeHumidityPercent, Value(fields[HumidityField]));
            foreach ((int depthCm, int field) in SoilFields) builder.PutSoil(day, depthCm, Value(fields[field]));
        });

    private static double Value(string field)
    {
        double value = double.Parse(field, CultureInfo.InvariantCulture);
        return value < LowestPossible ? double.NaN : value;
    }
}
