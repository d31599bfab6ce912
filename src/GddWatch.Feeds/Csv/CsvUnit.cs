namespace GddWatch.Feeds.Csv;

/// <summary>What has to be done to a column's numbers.</summary>
internal enum CsvUnit
{
    /// <summary>Nothing: they are in the unit of the daily record.</summary>
    Same,

    /// <summary>°F to °C.</summary>
    Fahrenheit,

    /// <summary>cm to mm.</summary>
    Centimetre,

    /// <summary>inch to mm.</summary>
    Inch,
}
