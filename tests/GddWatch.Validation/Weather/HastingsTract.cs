using System.Globalization;

namespace GddWatch.Validation.Weather;

/// <summary>
/// Reads the daily weather of the Californian irrigation station Hastings Tract East (CIMIS 212): comma-separated, each value followed by a quality
/// letter under a header that is always the same, so that columns are found by their place.
/// </summary>
internal static class HastingsTract
{
    /// <summary>The file does not say where the station stands; from memory.</summary>
    private const double LatitudeDegrees = 38.28;

    private const int DayColumn = 3;
    private const int RainColumn = 7;
    private const int MaximumColumn = 13;
    private const int MinimumColumn = 15;
    private const int SoilColumn = 31;

    /// <summary>Letters for far out of range, out of service and missing.</summary>
    private static readonly string[] Unusable = ["R", "S", "M"];

    /// <summary>The station with soil temperature at 15 cm, or null where the file is not there.</summary>
    public static MeasuredStation? Read(string weatherFolder)
    {
        string file = Path.Combine(weatherFolder, "cimis", "LHT_CIMIS_daily.csv");
        if (!File.Exists(file)) return null;
        StationBuilder builder = new();
        DataLines.Each(file, line => line.Split(','), cells =>
        {
            bool header = cells[DayColumn] == "Date";
            if (header || string.IsNullOrWhiteSpace(cells[DayColumn])) return;
            DateOnly day = DateOnly.ParseExact(cells[DayColumn], "M/d/yyyy", CultureInfo.InvariantCulture);
            builder.Put(day, Value(cells[MinimumColumn]), Value(cells[MaximumColumn]), Value(cells[RainColumn]));
            if (!Unusable.Contains(cells[SoilColumn + 1].Trim())) builder.PutSoil(day, 15, Value(cells[SoilColumn]));
        });
        return builder.Build("Hastings Tract, California (irrigated)", LatitudeDegrees, false);
    }

    private static double Value(string cell) => string.IsNullOrWhiteSpace(cell) ? double.NaN : double.Parse(cell, CultureInfo.InvariantCulture);
}
