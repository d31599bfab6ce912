using System.Globalization;
using GddWatch.Agronomy.Weather;
using GddWatch.Feeds.Reading;

namespace GddWatch.Feeds.Csv;

/// <summary>One variable's column: its place, its unit, and what it may hold.</summary>
internal sealed record CsvColumn(WeatherVariable Variable, string Name, int Place, CsvUnit Unit)
{
    /// <summary>Whether a row without a good value here is left out; a missing value is fine.</summary>
    public bool IsRequired => Variable is WeatherVariable.MinimumAirC or WeatherVariable.MaximumAirC;

    public PossibleValues Possible { get; } = PossibleValues.Of(Variable);

    /// <summary>The possible values in the file's own unit.</summary>
    public string Bounds => Unit switch
    {
        CsvUnit.Fahrenheit => $"{Show((Possible.Lowest * 1.8) + 32)} to {Show((Possible.Highest * 1.8) + 32)} °F",
        CsvUnit.Centimetre => $"{Show(Possible.Lowest / 10)} to {Show(Possible.Highest / 10)} cm",
        CsvUnit.Inch => $"{Show(Possible.Lowest / 25.4)} to {Show(Possible.Highest / 25.4)} inch",
        _ => $"{Show(Possible.Lowest)} to {Show(Possible.Highest)} {Possible.Unit}",
    };

    public static CsvColumn Of(CsvFeedDefinition definition, WeatherVariable variable, string name, int place) => new(variable, name, place, UnitOf(definition, variable));

    /// <summary>The value in the unit of the daily record.</summary>
    public double ToRecordUnit(double value) => Unit switch
    {
        CsvUnit.Fahrenheit => (value - 32.0) * 5.0 / 9.0,
        CsvUnit.Centimetre => value * 10.0,
        CsvUnit.Inch => value * 25.4,
        _ => value,
    };

    private static CsvUnit UnitOf(CsvFeedDefinition definition, WeatherVariable variable) => variable switch
    {
        WeatherVariable.MinimumAirC or WeatherVariable.MaximumAirC or WeatherVariable.MeanAirC or WeatherVariable.Soil5CmC or WeatherVariable.Soil10CmC =>
            definition.TemperatureUnit == FileTemperatureUnit.Fahrenheit ? CsvUnit.Fahrenheit : CsvUnit.Same,
        WeatherVariable.PrecipitationMm or WeatherVariable.SnowDepthMm => definition.PrecipitationUnit switch
        {
            FileLengthUnit.Centimetre => CsvUnit.Centimetre,
            FileLengthUnit.Inch => CsvUnit.Inch,
            _ => CsvUnit.Same,
        },
        _ => CsvUnit.Same,
    };

    private static string Show(double value) => value.ToString("0.#", CultureInfo.InvariantCulture);
}
