using GddWatch.Agronomy.Quantities;

namespace GddWatch.Agronomy.Changes;

/// <summary>What a condition goes by, as a line that can be drawn: a value a day and the limit that it is held against.</summary>
/// <param name="Name">Its name within a sentence.</param>
/// <param name="Title">Its name over the chart, short.</param>
/// <param name="Unit">The reader's unit, such as "°F".</param>
/// <param name="Values">One value a day of the series; NaN where it is not known.</param>
/// <param name="Shown">A value in the reader's unit.</param>
/// <param name="Limits">The limit, or both ends of a band, in the same measure as the values.</param>
/// <param name="LimitWords">The limit in words, such as "at or above 50 °F".</param>
internal sealed record DrawnMeasure(string Name, string Title, string Unit, double[] Values, Func<double, double> Shown, IReadOnlyList<double> Limits, string LimitWords)
{
    /// <summary>A temperature [°C].</summary>
    public static DrawnMeasure OfTemperature(string name, string title, double[] celsius, IReadOnlyList<double> limitsC, string limitWords, ReadersUnits units) => units == ReadersUnits.UnitedStates
        ? new(name, title, "°F", celsius, value => value * 1.8 + 32, limitsC, limitWords)
        : new(name, title, "°C", celsius, value => value, limitsC, limitWords);

    /// <summary>Heat [°C-days].</summary>
    public static DrawnMeasure OfHeat(string name, string title, double[] celsiusDays, IReadOnlyList<double> limitsCelsiusDays, string limitWords, ReadersUnits units) => units == ReadersUnits.UnitedStates
        ? new(name, title, "°F-days", celsiusDays, value => value * 1.8, limitsCelsiusDays, limitWords)
        : new(name, title, "°C-days", celsiusDays, value => value, limitsCelsiusDays, limitWords);

    /// <summary>A share from 0 to 1.</summary>
    public static DrawnMeasure OfShare(string name, string title, double[] shares, IReadOnlyList<double> limits, string limitWords) =>
        new(name, title, "%", shares, value => value * 100, limits, limitWords);

    /// <summary>A value with its unit, in whole units where they are small, else to a tenth.</summary>
    public string InWords(double value)
    {
        double shown = Shown(value);
        int decimals = Unit is "°F" or "°C" ? 1 : 0;
        double rounded = Math.Round(shown, decimals, MidpointRounding.AwayFromZero);
        return $"{(rounded == 0 ? 0 : rounded).ToString("0.#", System.Globalization.CultureInfo.InvariantCulture)} {Unit}";
    }
}
