using System.Globalization;
using GddWatch.Agronomy.Weather;
using GddWatch.Configuration.Scalars;
using GddWatch.Configuration.Texts;
using GddWatch.Configuration.Yaml;
using GddWatch.Feeds;
using GddWatch.Feeds.Archives;
using GddWatch.Feeds.Csv;
using GddWatch.Feeds.Services;

namespace GddWatch.Configuration.Reading;

/// <summary>Turns the text of a feed into its definition; null where anything in it is wrong.</summary>
public sealed class FeedReader(FaultList faults, ConfigurationPaths paths)
{
    private static readonly string[] Kinds = ["csv", "archive", "service"];
    private static readonly string[] CsvKeys = ["csv", "columns", "units", "date-format", "missing", "comment", "separator", "site-column", "observed-at"];
    private static readonly string[] UscrnKeys = ["archive", "files"];
    private static readonly string[] GhcnKeys = ["archive", "files", "station", "observed-at"];
    private static readonly string[] ServiceKeys = ["service", "base-address"];
    private static readonly string[] StationServiceKeys = ["service", "station", "base-address"];
    private const int StationIdLength = 11;

    /// <summary>Reads a feed.</summary>
    public FeedDefinition? Read(FeedText text)
    {
        string[] kinds = [.. text.WrittenKeys.Intersect(Kinds)];
        switch (kinds)
        {
            case ["csv"]:
                RefuseForeignKeys(text, CsvKeys, "csv");
                return ReadCsv(text);
            case ["archive"]:
                RefuseForeignKeys(text, IsUscrn(text) ? UscrnKeys : GhcnKeys, IsUscrn(text) ? "archive: uscrn-daily" : "archive");
                return ReadArchive(text);
            case ["service"]:
                return ReadService(text);
            case []:
                faults.Add(text.Place, null, "This feed does not say what it is.", "csv with the path of a file, archive: uscrn-daily with its files, or service: open-meteo");
                return null;
            default:
                faults.Add(text.Place, string.Join(", ", kinds), "This feed is several things at once.", "one entry of the list for each feed, with a hyphen before each");
                return null;
        }
    }

    private CsvFeedDefinition? ReadCsv(FeedText text)
    {
        RequireKey(text, "columns", "for example columns: { date: date, minimum: tmin_c, maximum: tmax_c, precipitation: rain_mm }");
        RequireKey(text, "units", "for example units: { temperature: °C, precipitation: mm }");
        if (text.DateFormat is { } format) CheckDateFormat(format);
        if (text.Separator is { } separator && (separator.Value.Length != 1 || separator.Value is "\"" or "\n" or "\r"))
        {
            faults.Add(separator.Place, "The separator is not a single character.", "one character in quotation marks, such as \",\" or \";\" or \"\\t\"");
            return null;
        }

        if (text.Columns is { } columns) CheckHeaders(columns);
        Dictionary<WeatherVariable, Placed<string>> headers = text.Columns is { } all ? HeadersOf(all) : [];
        bool hasWater = headers.ContainsKey(WeatherVariable.PrecipitationMm) || headers.ContainsKey(WeatherVariable.SnowDepthMm);
        if (text.Units is { } units && hasWater && !units.WrittenKeys.Contains("precipitation"))
        {
            faults.Add(units.Place, null, "The unit of precipitation is missing, though there is a column of rain or snow.", "precipitation: mm, cm or in");
        }

        if (text is not { Csv: { } path, Columns.Date: { } date, Units.Temperature: { } temperature }) return null;
        return new CsvFeedDefinition
        {
            Path = paths.Resolve(path.Value),
            DateColumn = date.Value,
            Columns = headers.ToDictionary(each => each.Key, each => each.Value.Value),
            TemperatureUnit = temperature.Value,
            PrecipitationUnit = text.Units.Precipitation?.Value,
            DateFormat = text.DateFormat?.Value ?? "yyyy-MM-dd",
            Missing = text.Missing is { } missing ? [.. missing.Items.Select(each => each.Value)] : [""],
            Comment = text.Comment?.Value,
            Separator = text.Separator?.Value[0] ?? ',',
            SiteColumn = text.SiteColumn is { Name: { } name, Value: { } value } ? (name.Value, value.Value) : null,
            ObservedAt = text.ObservedAt?.Value ?? ObservationTime.Midnight,
        };
    }

    private ArchiveFeedDefinition? ReadArchive(FeedText text)
    {
        RequireKey(text, "files", "for example files: weather/uscrn-daily/*/CRND0103-*-IN_Bedford_5_WNW.txt");
        if (text.Archive is not { } archive) return null;
        if (!Words.Archives.TryGetValue(archive.Value, out ArchiveKind kind))
        {
            faults.Add(archive.Place, $"There is no archive \"{archive.Value}\".", NearestWord.Hint(archive.Value, [.. Words.Archives.Keys]));
            return null;
        }

        if (kind == ArchiveKind.GhcnDailyByYearCsv)
        {
            RequireKey(text, "station", "for example station: USW00094846, since a file by year holds every station");
            if (text.Station is null) return null;
        }

        if (text.Station is { } station && !IsStation(station)) return null;
        return text.Files is { } files ? new ArchiveFeedDefinition(kind, paths.Resolve(files.Value), text.Station?.Value, text.ObservedAt?.Value) : null;
    }

    private ServiceFeedDefinition? ReadService(FeedText text)
    {
        if (text.Service is not { } service) return null;
        if (!Words.Services.TryGetValue(service.Value, out ServiceKind kind))
        {
            faults.Add(service.Place, $"There is no weather service \"{service.Value}\".", NearestWord.Hint(service.Value, [.. Words.Services.Keys]));
            return null;
        }

        bool hasStation = kind == ServiceKind.NoaaDailySummaries;
        RefuseForeignKeys(text, hasStation ? StationServiceKeys : ServiceKeys, $"service: {service.Value}");
        if (hasStation) RequireKey(text, "station", "for example station: USW00094846, one near the site");
        Uri? address = null;
        if (text.BaseAddress is { } written && !IsAddress(written, out address)) return null;
        if (hasStation && (text.Station is not { } station || !IsStation(station))) return null;
        return new ServiceFeedDefinition { Kind = kind, BaseAddress = address ?? ServiceFacts.DefaultAddress(kind), Station = hasStation ? text.Station?.Value : null };
    }

    private bool IsStation(Placed<string> station)
    {
        if (station.Value.Length == StationIdLength && station.Value.All(each => char.IsAsciiLetterUpper(each) || char.IsAsciiDigit(each) || each is '-' or '_')) return true;
        faults.Add(station.Place, "This is not the id of a station of GHCN-Daily.", "11 capital letters and digits, such as USW00094846");
        return false;
    }

    private bool IsAddress(Placed<string> written, out Uri? address)
    {
        const string Accepted = "an address such as https://weather.example.org/, ending in /; http only for this machine itself, such as http://127.0.0.1:8080/";
        bool isWeb = Uri.TryCreate(written.Value, UriKind.Absolute, out address) && (address.Scheme == Uri.UriSchemeHttps || address.Scheme == Uri.UriSchemeHttp);
        if (!isWeb || address!.Query.Length > 0 || address.Fragment.Length > 0 || address.UserInfo.Length > 0)
        {
            faults.Add(written.Place, "This is not the address of a weather service.", Accepted);
            return false;
        }

        if (address.Scheme == Uri.UriSchemeHttp && !address.IsLoopback)
        {
            faults.Add(written.Place, "Weather is not fetched without https from another machine.", Accepted);
            return false;
        }

        return true;
    }

    private static bool IsUscrn(FeedText text) => text.Archive is { } archive && Words.Archives.TryGetValue(archive.Value, out ArchiveKind kind) && kind == ArchiveKind.UscrnDaily;

    private void RefuseForeignKeys(FeedText text, string[] own, string kind)
    {
        foreach (string key in text.WrittenKeys.Except(own).Intersect(TextMember.Of(typeof(FeedText)).Select(member => member.Key)))
        {
            faults.Add(text.Place, key, $"The key \"{key}\" does not go with a feed of the kind {kind}.", $"any of {string.Join(", ", own)}");
        }
    }

    private void RequireKey(FeedText text, string key, string example)
    {
        if (!text.WrittenKeys.Contains(key)) faults.Add(text.Place, null, $"The key \"{key}\" is missing.", example);
    }

    private void CheckDateFormat(Placed<string> format)
    {
        var day = new DateOnly(2023, 11, 25);
        bool tellsTheDay;
        try
        {
            string written = day.ToString(format.Value, CultureInfo.InvariantCulture);
            tellsTheDay = DateOnly.TryParseExact(written, format.Value, CultureInfo.InvariantCulture, DateTimeStyles.None, out DateOnly again) && again == day;
        }
        catch (FormatException)
        {
            tellsTheDay = false;
        }

        if (!tellsTheDay) faults.Add(format.Place, "This is not the form of a date with year, month and day.", "yyyy, MM and dd in their order, such as yyyy-MM-dd, MM/dd/yyyy or yyyyMMdd");
    }

    private void CheckHeaders(ColumnsText columns)
    {
        var first = new HashSet<string>();
        foreach (Placed<string> header in HeadersOf(columns).Values.Prepend(columns.Date).OfType<Placed<string>>())
        {
            if (!first.Add(header.Value)) faults.Add(header.Place, $"The column \"{header.Value}\" is said to hold two things.", "a column of its own for each");
        }
    }

    private static Dictionary<WeatherVariable, Placed<string>> HeadersOf(ColumnsText columns)
    {
        (WeatherVariable Variable, Placed<string>? Header)[] all =
        [
            (WeatherVariable.MinimumAirC, columns.Minimum),
            (WeatherVariable.MaximumAirC, columns.Maximum),
            (WeatherVariable.MeanAirC, columns.Mean),
            (WeatherVariable.PrecipitationMm, columns.Precipitation),
            (WeatherVariable.SnowDepthMm, columns.SnowDepth),
            (WeatherVariable.SolarRadiationMJ, columns.SolarRadiation),
            (WeatherVariable.RelativeHumidityPercent, columns.Humidity),
            (WeatherVariable.WindMPerS, columns.Wind),
            (WeatherVariable.Soil5CmC, columns.Soil5Cm),
            (WeatherVariable.Soil10CmC, columns.Soil10Cm),
        ];
        return all.Where(each => each.Header is not null).ToDictionary(each => each.Variable, each => each.Header!);
    }
}
