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
        string[]? header = null;
        foreach (string line in File.ReadLines(file))
        {
            string[] cells = line.Split(',');
            if (header is null)
            {
                header = cells;
                continue;
            }

            double Cell(string name) => Value(cells[Array.IndexOf(header, name)]);
            DateOnly day = DateOnly.ParseExact(cells[0], "yyyy-MM-dd", CultureInfo.InvariantCulture);
            builder.Put(day, Cell("airtmin"), Cell("airtmax"), Cell("prec"));
            builder.PutSoil(day, 10, Cell("s10t"));
        }

        return builder.Build("Harvard Forest, Massachusetts", LatitudeDegrees, true);
    }

    private static double Value(string cell) => cell is "NA" or "" ? double.NaN : double.Parse(cell, CultureInfo.InvariantCulture);
}
