using System.ComponentModel;
using System.ComponentModel.DataAnnotations;
using GddWatch.Configuration.Yaml;
using GddWatch.Feeds.Csv;

namespace GddWatch.Configuration.Texts;

[Description("A source of daily weather: a CSV file or folder, the files of a public archive, or an open weather service.")]
public sealed record FeedText : TextGroup
{
    [Description("The path of a CSV file, packed as .gz or .zip or not, or of a folder of them with / at its end, from the folder that holds the configuration folder.")]
    public Placed<string>? Csv { get; init; }

    [Description("Which column of the CSV file holds what, by its header.")]
    public ColumnsText? Columns { get; init; }

    [Description("The units of the CSV file.")]
    public FileUnitsText? Units { get; init; }

    [Description("How dates are written in the CSV file, such as yyyy-MM-dd (the default) or MM/dd/yyyy.")]
    public Placed<string>? DateFormat { get; init; }

    [Description("Texts that stand for a missing value in the CSV file.")]
    [MayBeEmpty]
    public PlacedList<Placed<string>>? Missing { get; init; }

    [Description("What a comment line of the CSV file begins with.")]
    public Placed<string>? Comment { get; init; }

    [Description("The character between the fields of the CSV file: a comma by default.")]
    [MayBeEmpty]
    public Placed<string>? Separator { get; init; }

    [Description("Where one CSV file holds several sites: which rows are this one's.")]
    public SiteColumnText? SiteColumn { get; init; }

    [Description("When the station is read: midnight (the default), or morning, when a maximum belongs to the day before.")]
    public Placed<ObservationTime>? ObservedAt { get; init; }

    [Description("The format of a public archive: uscrn-daily, ghcn-daily-dly, ghcn-daily-station-csv or ghcn-daily-by-year-csv.")]
    public Placed<string>? Archive { get; init; }

    [Description("The archive's files, * standing for any text within one folder or file name.")]
    public Placed<string>? Files { get; init; }

    [Description("The id of the station in the files of GHCN-Daily, 11 characters; required for ghcn-daily-by-year-csv, and for service: noaa-daily-summaries.")]
    public Placed<string>? Station { get; init; }

    [Description("An open weather service: open-meteo (forecast and past days computed by models, any place; its free host is for non-commercial use only, under 10,000 calls a day, 5,000 an hour, 600 a minute), "
        + "noaa-daily-summaries (measured days of a station) or us-weather-service (forecast, United States).")]
    public Placed<string>? Service { get; init; }

    [Description("The address of the weather service where it is another than its own, such as its host for paying customers; https, or http for this machine itself.")]
    public Placed<string>? BaseAddress { get; init; }
}
