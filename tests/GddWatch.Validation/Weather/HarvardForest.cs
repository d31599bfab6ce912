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

    /// <summary>Bud break by species and year (data set HF003). The file ends its lines with a carriage return alone.</summary>
    public static IReadOnlyList<(string Species, int Year, DateOnly Day)> BudBreak(string weatherFolder) =>
    [
        .. File.ReadAllText(Path.Combine(weatherFolder, "harvard-forest", "hf003-06-mean-spp.csv")).Split('\r', '\n').Skip(1)
            .Select(line => line.Split(','))
            .Where(cells => cells.Length > 2 && cells[2] != "NA")
            .Select(cells => (cells[1], Year: int.Parse(cells[0], CultureInfo.InvariantCulture), DayOfYear: int.Parse(cells[2], CultureInfo.InvariantCulture)))
            .Select(each => (each.Item1, each.Year, new DateOnly(each.Year, 1, 1).AddDays(each.DayOfYear - 1))),
    ];

    private static double Value(string cell) => cell is "NA" or "" ? double.NaN : double.Parse(cell, CultureInfo.InvariantCulture);
}
