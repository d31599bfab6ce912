using System.Globalization;

namespace GddWatch.Agronomy.Tests.Turf;

/// <summary>
/// A day of a Californian station on irrigated grass, with the reference evapotranspiration that its network publishes (California Irrigation Management Information System, station 212, Hastings Tract
/// East, 2009 to 2021; hourly Penman equation of the network, MEMORY). Days on which any of the values has a quality letter are left out.
/// </summary>
internal sealed record IrrigatedStation(int DayOfYear, double MinimumC, double MaximumC, double SolarMJ, double HumidityPercent, double WindMPerS, double PublishedMm)
{
    /// <summary>Latitude [°] (MEMORY: the files do not have it).</summary>
    public const double Latitude = 38.28;

    /// <summary>Height above the sea [m] (MEMORY).</summary>
    public const double ElevationM = 2;

    private const double MJPerDayPerWatt = 0.0864;

    private static readonly int[] QualityFields = [6, 10, 14, 16, 24, 28];

    /// <summary>Its days. Skips the test where the file is not there.</summary>
    public static IrrigatedStation[] Days =>
    [
        .. File.ReadLines(SharedFiles.Find("weather/cimis/LHT_CIMIS_daily.csv")).Skip(1)
            .Select(line => line.Split(','))
            .Where(fields => fields.Length > 28 && fields[5].Trim().Length > 0 && QualityFields.All(place => string.IsNullOrWhiteSpace(fields[place])))
            .Select(fields => new IrrigatedStation(
                int.Parse(fields[4], CultureInfo.InvariantCulture), Number(fields[15]), Number(fields[13]), Number(fields[9]) * MJPerDayPerWatt, Number(fields[23]), Number(fields[27]), Number(fields[5]))),
    ];

    private static double Number(string text) => double.TryParse(text, CultureInfo.InvariantCulture, out double value) ? value : double.NaN;
}
