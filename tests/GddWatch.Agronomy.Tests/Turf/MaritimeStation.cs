using System.Globalization;
using GddWatch.Agronomy.Turf;

namespace GddWatch.Agronomy.Tests.Turf;

/// <summary>
/// A day at Dublin Airport from 1980 on, with the potential evapotranspiration and the soil moisture deficit of well drained ground that the Irish weather service publishes (Met Éireann, CC BY 4.0).
/// Wind is measured at 10 m in knots, radiation in J/cm².
/// </summary>
internal sealed record MaritimeStation(
    DateOnly Day, double MinimumC, double MaximumC, double RainMm, double SolarMJ, double WindMPerS, double PublishedMm, double DeficitMm)
{
    /// <summary>Latitude [°] (MEMORY).</summary>
    public const double Latitude = 53.43;

    /// <summary>Height above the sea [m] (MEMORY).</summary>
    public const double ElevationM = 71;

    private const double MPerSPerKnot = 1852.0 / 3600.0;

    /// <summary>Its days. Skips the test where the file is not there.</summary>
    public static MaritimeStation[] Days =>
    [
        .. File.ReadLines(SharedFiles.Find("weather/met-eireann/dly532.csv")).Skip(1)
            .Select(line => line.Split(','))
            .Select(fields => new MaritimeStation(
                Date(fields[0]), Number(fields[2]), Number(fields[1]), Number(fields[4]), Number(fields[11]) / 100, WindSpeed.At2MMPerS(Number(fields[6]) * MPerSPerKnot, 10), Number(fields[13]), Number(fields[15])))
            .Where(day => day.Day.Year >= 1980),
    ];

    /// <summary>The file's years have two digits, and it begins in 1942.</summary>
    private static DateOnly Date(string text)
    {
        int year = int.Parse(text.AsSpan(text.Length - 2), CultureInfo.InvariantCulture);
        return DateOnly.ParseExact($"{text[..^2]}{(year >= 42 ? 1900 : 2000) + year}", "dd-MMM-yyyy", CultureInfo.InvariantCulture);
    }

    private static double Number(string text) => double.TryParse(text, CultureInfo.InvariantCulture, out double value) ? value : double.NaN;
}
