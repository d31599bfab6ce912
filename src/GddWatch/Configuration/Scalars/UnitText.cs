using System.Globalization;
using System.Text.RegularExpressions;
using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Treatments.Conditions;
using UnitsNet;
using UnitsNet.Units;
using Temperature = GddWatch.Agronomy.Quantities.Temperature;

namespace GddWatch.Configuration.Scalars;

/// <summary>
/// Reads quantities that carry their unit in text, such as "50 °F". A number alone is refused, since nobody can tell which unit was meant; so is a comma,
/// which is a decimal sign for some readers and none for others.
/// </summary>
public static partial class UnitText
{
    /// <summary>The coldest and the warmest threshold that makes sense for a lawn [°C].</summary>
    public const double ColdestC = -50, WarmestC = 60;

    /// <summary>The deepest soil that is looked at [cm].</summary>
    public const double DeepestCm = 100;

    /// <summary>The most heat that a year can bring [°C-days]; above 60 °C every day of it.</summary>
    public const double MostCelsiusDays = 20_000;

    private const double MostWaterMm = 2000;
    private const double MostPercent = 300;

    internal const string TemperaturePattern = @"^\s*(?<number>[+-]?[0-9]+(\.[0-9]+)?)\s*(?<unit>(°\s?)?[CFcf])\s*$";
    internal const string DepthPattern = @"^\s*(?<number>[+-]?[0-9]+(\.[0-9]+)?)\s*(?<unit>mm|cm|in|inch|inches)\s*$";
    internal const string ElevationPattern = @"^\s*(?<number>[+-]?[0-9]+(\.[0-9]+)?)\s*(?<unit>m|ft|foot|feet)\s*$";
    internal const string HeatPattern = @"^\s*(?<number>[0-9]+(\.[0-9]+)?)\s*°?(?<unit>[CFcf])[-· ]?days?\s*$";
    internal const string DaysPattern = @"^\s*(?<number>[0-9]{1,4})\s+days?\s*$";
    internal const string PercentPattern = @"^\s*(?<number>[0-9]+(\.[0-9]+)?)\s*%\s*$";
    internal const string MissingWaterPattern = @"^\s*(?<number>[0-9]+(\.[0-9]+)?)\s*(?<unit>%|mm|cm|in|inch|inches)\s*$";
    internal const string HoldingPattern = @"^\s*(?<number>[0-9]{1,3})(\s+of\s+(?<of>[0-9]{1,3}))?\s+days?\s*$";

    // Signs and words. The units library would read the signs, but it learns those of all quantities there are before it reads its first one, which costs each
    // command the better part of a second.
    private static readonly Dictionary<string, LengthUnit> WordsForLengths = new()
    {
        ["mm"] = LengthUnit.Millimeter, ["cm"] = LengthUnit.Centimeter, ["m"] = LengthUnit.Meter, ["in"] = LengthUnit.Inch, ["ft"] = LengthUnit.Foot,
        ["inch"] = LengthUnit.Inch, ["inches"] = LengthUnit.Inch, ["foot"] = LengthUnit.Foot, ["feet"] = LengthUnit.Foot,
    };

    /// <summary>Reads a temperature such as "50 °F" or "10 C".</summary>
    public static ScalarReading Temperature(string text)
    {
        if (!Take(TemperatureText(), text, out double number, out string unit)) return Refuse(text, "temperature");
        Temperature temperature = unit.ToUpperInvariant().EndsWith('F')
            ? Agronomy.Quantities.Temperature.FromFahrenheit(number)
            : Agronomy.Quantities.Temperature.FromCelsius(number);
        return temperature.Celsius is >= ColdestC and <= WarmestC
            ? ScalarReading.Of(temperature)
            : ScalarReading.Refused("No lawn knows such a temperature.", "-50 °C to 60 °C (-58 °F to 140 °F)");
    }

    /// <summary>Reads a difference of temperature such as "2 °F" or "1 C": no offset, 1 °C is 1.8 °F.</summary>
    public static ScalarReading TemperatureDifference(string text)
    {
        if (!Take(TemperatureText(), text, out double number, out string unit)) return Refuse(text, "temperature difference");
        double celsius = unit.ToUpperInvariant().EndsWith('F') ? number / 1.8 : number;
        return celsius is > 0 and <= 30
            ? ScalarReading.Of(Agronomy.Quantities.TemperatureDifference.FromCelsius(celsius))
            : ScalarReading.Refused("No threshold needs such a difference.", "above 0 °C and up to 30 °C (54 °F)");
    }

    /// <summary>Reads a depth of water such as "10 mm" or "0.4 in".</summary>
    public static ScalarReading Water(string text)
    {
        if (!TakeLength(DepthText(), text, out Length length)) return Refuse(text, "depth of water");
        return length.Millimeters is >= 0 and <= MostWaterMm
            ? ScalarReading.Of(WaterDepth.FromMillimetres(length.Millimeters))
            : ScalarReading.Refused("No days bring so much water.", "0 mm to 2000 mm (79 in)");
    }

    /// <summary>Reads a share such as "85 %".</summary>
    public static ScalarReading Share(string text)
    {
        if (!Take(PercentText(), text, out double number, out _)) return Refuse(text, "share");
        return number is >= 0 and <= MostPercent ? ScalarReading.Of(new Share(number / 100)) : ScalarReading.Refused("This share is too large.", "0 % to 300 %");
    }

    /// <summary>Reads missing water such as "50 %" of what may be missing, or "15 mm".</summary>
    public static ScalarReading MissingWater(string text)
    {
        ScalarReading read = PercentText().IsMatch(text) ? Share(text) : Water(text);
        return read.Value switch
        {
            Share share => ScalarReading.Of(new MissingWater(share.Fraction, null)),
            WaterDepth depth => ScalarReading.Of(new MissingWater(null, depth)),
            _ => read,
        };
    }

    /// <summary>Reads a depth such as "5 cm" or "2 in".</summary>
    public static ScalarReading Depth(string text)
    {
        if (!TakeLength(DepthText(), text, out Length length)) return Refuse(text, "depth");
        return length.Centimeters is > 0 and <= DeepestCm
            ? ScalarReading.Of(length.Unit == LengthUnit.Inch ? Agronomy.Quantities.Depth.FromInches(length.Value) : Agronomy.Quantities.Depth.FromCentimetres(length.Centimeters))
            : ScalarReading.Refused("Soil temperature is not looked at in this depth.", "above 0 cm and up to 100 cm (40 in)");
    }

    /// <summary>Reads a height above the sea such as "250 m" or "820 ft".</summary>
    public static ScalarReading Elevation(string text)
    {
        if (!TakeLength(ElevationText(), text, out Length length)) return Refuse(text, "height");
        return length.Meters is >= -500 and <= 6000
            ? ScalarReading.Of(new Elevation(length.Meters))
            : ScalarReading.Refused("No lawn lies at such a height.", "-500 m to 6000 m (-1640 ft to 19685 ft)");
    }

    /// <summary>Reads heat such as "350 °F-days" or "78 °C-days".</summary>
    public static ScalarReading Heat(string text)
    {
        if (!Take(HeatText(), text, out double number, out string unit)) return Refuse(text, "heat sum");
        DegreeDays heat = unit is "F" or "f" ? DegreeDays.FromFahrenheitDays(number) : DegreeDays.FromCelsiusDays(number);
        return heat.CelsiusDays is > 0 and <= MostCelsiusDays
            ? ScalarReading.Of(heat)
            : ScalarReading.Refused("No year brings such a heat sum.", "above 0 °C-days and up to 20000 °C-days (36000 °F-days)");
    }

    /// <summary>Reads a number of days such as "5 days".</summary>
    public static ScalarReading Days(string text)
    {
        if (!Take(DaysText(), text, out double number, out _)) return Refuse(text, "number of days");
        return number is >= 1 and <= 366
            ? ScalarReading.Of(new DayCount((int)number))
            : ScalarReading.Refused("This number of days does not fit into a year.", "1 day to 366 days");
    }

    /// <summary>Reads a chance such as "50 %".</summary>
    public static ScalarReading Chance(string text)
    {
        if (!Take(PercentText(), text, out double number, out _)) return Refuse(text, "chance");
        return number is > 0 and < 100
            ? ScalarReading.Of(new Chance(number / 100))
            : ScalarReading.Refused("A usual date needs a chance between never and always.", "above 0 % and below 100 %, such as \"50 %\"");
    }

    /// <summary>Reads how long something must be so: "3 of 5 days", or "3 days" for days in a row.</summary>
    public static ScalarReading Holding(string text)
    {
        Match match = HoldingText().Match(text);
        if (!match.Success) return Refuse(text, "holding time");
        int days = int.Parse(match.Groups["number"].Value, CultureInfo.InvariantCulture);
        int ofDays = match.Groups["of"].Success ? int.Parse(match.Groups["of"].Value, CultureInfo.InvariantCulture) : days;
        if (days > ofDays) return ScalarReading.Refused($"{days} of {ofDays} days can never be.", $"at most {ofDays} of {ofDays} days");
        return days >= 1 && ofDays <= 60
            ? ScalarReading.Of(new Holding(days, ofDays))
            : ScalarReading.Refused("This holding time is too short or too long.", "1 day to 60 days");
    }

    private static bool TakeLength(Regex pattern, string text, out Length length)
    {
        length = default;
        if (!Take(pattern, text, out double number, out string word)) return false;
        length = Length.From(number, WordsForLengths[word]);
        return true;
    }

    private static bool Take(Regex pattern, string text, out double number, out string unit)
    {
        Match match = pattern.Match(text);
        number = 0;
        unit = match.Groups["unit"].Value;
        return match.Success && double.TryParse(match.Groups["number"].ValueSpan, NumberStyles.Float, CultureInfo.InvariantCulture, out number) && double.IsFinite(number);
    }

    private static ScalarReading Refuse(string text, string what)
    {
        string article = what[0] is 'a' or 'e' or 'i' or 'o' ? "an" : "a";
        bool bare = double.TryParse(text, NumberStyles.Float, CultureInfo.InvariantCulture, out _);
        return ScalarReading.Refused(bare ? $"{(article == "an" ? "An" : "A")} {what} needs its unit beside the number." : $"This is not {article} {what} that can be read.");
    }

    [GeneratedRegex(TemperaturePattern, RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex TemperatureText();

    [GeneratedRegex(DepthPattern, RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex DepthText();

    [GeneratedRegex(ElevationPattern, RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex ElevationText();

    [GeneratedRegex(HeatPattern, RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex HeatText();

    [GeneratedRegex(DaysPattern, RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex DaysText();

    [GeneratedRegex(PercentPattern, RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex PercentText();

    [GeneratedRegex(HoldingPattern, RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex HoldingText();
}
