using System.Globalization;

namespace GddWatch.Validation.Weather;

/// <summary>Reads the daily weather of Dublin Airport (Met Éireann, station 532): comma-separated with a header, missing written as a blank.</summary>
internal static class DublinAirport
{
    private const double LatitudeDegrees = 53.43;
    private const int FirstYear = 1942;

    /// <summary>The station with soil temperature at 10 cm, or null where the file is not there.</summary>
    public static MeasuredStation? Read(string weatherFolder)
    {
        string file = Path.Combine(weatherFolder, "met-eireann", "dly532.csv");
        if (!File.Exists(file)) return null;
        StationBuilder builder = new();
        DataLines.EachRow(file, cell =>
        {
            DateOnly day = Day(cell("date"));
            builder.Put(day, Value(cell("mintp")), Value(cell("maxtp")), Value(cell("rain")));
            builder.PutSoil(day, 10, Value(cell("soil")));
        });
        return builder.Build("Dublin Airport, Ireland", LatitudeDegrees, true);
    }

    /// <summary>The file writes two digits of the year; it begins in 1942, so that 42 and later are of the last century.</summary>
    private static DateOnly Day(string cell)
    {
        string[] parts = cell.Split('-');
        int year = int.Parse(parts[2], CultureInfo.InvariantCulture);
        int century = year >= FirstYear % 100 ? 1900 : 2000;
        return DateOnly.ParseExact($"{parts[0]}-{parts[1]}-{century + year}", "dd-MMM-yyyy", CultureInfo.InvariantCulture);
    }

    private static double Value(string cell) => string.IsNullOrWhiteSpace(cell) ? double.NaN : double.Parse(cell, CultureInfo.InvariantCulture);
}
