// What the five elements are, and what is made of the flags beside each value.
//
//   TMAX, TMIN, TAVG   tenths of °C          PRCP   tenths of mm          SNWD   mm          missing: -9999
//
//   measurement flag   H    highest, lowest or mean of hourly values: used        T   a trace: used, its value is 0
//                      B, D total of two or four shorter totals: used             K, O, W   converted from other units: used
//                      P    "missing presumed zero": not measured, not used (PRCP, SNWD)
//                      L    a temperature that "appears to be lagged with respect to reported hour of observation": of which day is not known, not used
//   quality flag       any: failed a check of the archive, not used
//   source flag        S    TAVG is of a day that ends at 24:00 UTC, not at local midnight: not used
//   observation time   where there is one (US co-operative stations): a maximum read from 01:00 to 12:00 is of the day before
//
// Wind (AWND) is not read: the archive does not tell the height at which it was measured. Totals of several days (MDTX, MDTN, MDPR) are not read either.
//
// Source: readme.txt of GHCN-Daily, version 3.26, section III, and readme-by_station.txt (observation times), NOAA National Centers for Environmental Information.
// SEEN. That a morning's maximum is the day before's: common practice, and the reason why co-operative and airport days are a day apart.
using System.Buffers.Binary;
using System.Text;
using GddWatch.Agronomy.Weather;
using GddWatch.Feeds.Reading;

namespace GddWatch.Feeds.Archives.Ghcn;

/// <summary>What the elements are called, hold and mean.</summary>
internal static class GhcnElements
{
    /// <summary>How many there are.</summary>
    public const int Count = 5;

    /// <summary>The code of a value that is missing.</summary>
    public const int Missing = -9999;

    private const int CodeLength = 4;

    private static readonly string[] Codes = ["TMAX", "TMIN", "TAVG", "PRCP", "SNWD"];

    private static readonly WeatherVariable[] Variables =
        [WeatherVariable.MaximumAirC, WeatherVariable.MinimumAirC, WeatherVariable.MeanAirC, WeatherVariable.PrecipitationMm, WeatherVariable.SnowDepthMm];

    // In the archive's own units: each of millions of values is compared.
    private static readonly (int Lowest, int Highest)[] Bounds = [.. Enum.GetValues<GhcnElement>().Select(element =>
        ((int)Math.Ceiling(element.Possible().Lowest * element.UnitsInOne()), (int)Math.Floor(element.Possible().Highest * element.UnitsInOne())))];

    // The codes as numbers, each at the place that the lower half of its third letter says: I, A, V, C, W are all different there.
    private static readonly (uint Code, GhcnElement Element)[] ByThirdLetter = TableByThirdLetter();

    /// <summary>The element of a code; null where it is one that is not used.</summary>
    public static GhcnElement? Of(ReadOnlySpan<byte> code) =>
        code.Length == CodeLength && TryOf(BinaryPrimitives.ReadUInt32LittleEndian(code), out GhcnElement element) ? element : null;

    /// <summary>The element of a code of four letters as a number; false where it is one that is not used.</summary>
    public static bool TryOf(uint code, out GhcnElement element)
    {
        // In rows of any order the next element cannot be foreseen: one comparison that nearly always holds is faster than five.
        (uint known, element) = ByThirdLetter[(int)(code >> 16) & 0xF];
        return known == code;
    }

    /// <summary>The archive's code.</summary>
    public static string Code(this GhcnElement element) => Codes[(int)element];

    /// <summary>The variable of the daily record.</summary>
    public static WeatherVariable Variable(this GhcnElement element) => Variables[(int)element];

    /// <summary>The value in the unit of the daily record.</summary>
    public static double ToRecordUnit(this GhcnElement element, int value) => value / element.UnitsInOne();

    /// <summary>What the element can be.</summary>
    public static PossibleValues Possible(this GhcnElement element) => PossibleValues.Of(element.Variable());

    /// <summary>Whether a value in the archive's own unit can be.</summary>
    public static bool IsPossible(this GhcnElement element, int value) => value >= Bounds[(int)element].Lowest && value <= Bounds[(int)element].Highest;

    /// <summary>Whether the element is one of the day's extremes.</summary>
    public static bool IsExtreme(this GhcnElement element) => element is GhcnElement.Maximum or GhcnElement.Minimum;

    private static double UnitsInOne(this GhcnElement element) => element == GhcnElement.SnowDepth ? 1.0 : 10.0;

    private static (uint Code, GhcnElement Element)[] TableByThirdLetter()
    {
        var table = new (uint Code, GhcnElement Element)[16];
        foreach (GhcnElement element in Enum.GetValues<GhcnElement>())
        {
            uint code = BinaryPrimitives.ReadUInt32LittleEndian(Encoding.ASCII.GetBytes(element.Code()));
            ref (uint Code, GhcnElement Element) place = ref table[(int)(code >> 16) & 0xF];
            if (place.Code != 0) throw new InvalidOperationException($"{element.Code()} has the place of {place.Element.Code()}.");
            place = (code, element);
        }

        return table;
    }
}
