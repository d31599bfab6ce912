using GddWatch.Agronomy.Weather;

namespace GddWatch.Feeds.Csv;

/// <summary>A CSV file, or a folder of them, and how to read it.</summary>
public sealed record CsvFeedDefinition : FeedDefinition
{
    /// <summary>The file; a path that ends in "/" is a folder whose .csv, .csv.gz and .zip files are all read.</summary>
    public required string Path { get; init; }

    /// <summary>The header of the column that holds the date.</summary>
    public required string DateColumn { get; init; }

    /// <summary>The header of the column of each variable that the file knows; minimum and maximum are required.</summary>
    public required IReadOnlyDictionary<WeatherVariable, string> Columns { get; init; }

    /// <summary>The unit of temperatures in the file.</summary>
    public required FileTemperatureUnit TemperatureUnit { get; init; }

    /// <summary>The unit of precipitation and snow in the file; required where the file has such a column.</summary>
    public FileLengthUnit? PrecipitationUnit { get; init; }

    /// <summary>The .NET pattern of a date.</summary>
    public string DateFormat { get; init; } = "yyyy-MM-dd";

    /// <summary>Texts that stand for a missing value.</summary>
    public IReadOnlyList<string> Missing { get; init; } = [""];

    /// <summary>What a comment line begins with; null where the file has none.</summary>
    public string? Comment { get; init; }

    /// <summary>The character between fields.</summary>
    public char Separator { get; init; } = ',';

    /// <summary>Where one file holds several sites: the column, and the value of this site's rows.</summary>
    public (string Name, string Value)? SiteColumn { get; init; }

    /// <summary>When the station is read: in the morning a maximum belongs to the day before.</summary>
    public ObservationTime ObservedAt { get; init; } = ObservationTime.Midnight;
}
