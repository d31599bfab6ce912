using System.Globalization;

namespace GddWatch.Validation.Weather;

/// <summary>Reads the daily weather of Harvard Forest (data set HF001, Fisher station): comma-separated with a header, missing written NA.</summary>
internal static class HarvardForest
{
    private const double LatitudeDegrees = 42.53;

    /// <summary>The station with soil temperature at 10 cm, or null where the file is not there.</summary>
    public static MeasuredStation? Read(string weatherFolder)
    {
        string file = Path.Combine(weatherFolder, "harvard-forest", "hf001-06-daily-m.csv");
        if (!File.Exists(file)) return null;
        StationBuilder builder = new();
        DataLines.EachRow(file, cell =>
        {
            DateOnly day = DateOnly.ParseExact(cell("date"), "yyyy-MM-dd", CultureInfo.InvariantCulture);
            builder.Put(day, Value(cell("airtmin")), Value(cell("airtmax")), Value(cell("prec")));
            builder.PutSoil(day, 10, Value(cell("s10t")));
        });
        return builder.Build("Harvard Forest, Massachusetts", LatitudeDegrees, true);
    }

    private static double Value(string cell) => cell is "NA" or "" ? double.NaN : double.Parse(cell, CultureInfo.InvariantCulture);
}
