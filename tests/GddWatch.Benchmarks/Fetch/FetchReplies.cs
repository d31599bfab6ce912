using System.Globalization;
using System.Text;
using System.Text.Json;
using System.Text.Json.Nodes;
using GddWatch.Agronomy.Places;

namespace GddWatch.Benchmarks.Fetch;

/// <summary>Replies in the shapes that the services document, with invented values, for the places and days that were asked for.</summary>
internal sealed class FetchReplies(TimeProvider clock)
{
    private const double MaximumC = 18.5;
    private const double MinimumC = 7.5;

    private const int ForecastDays = 8;

    // With them a gridded forecast has some 1,400 entries, as many as a real one of 2022 (SEEN): all but three layers are parsed and passed over.
    private const int OtherLayers = 15;
    private const int OtherEntries = 90;

    private readonly string layers = Layers(clock.GetUtcNow());

    /// <summary>The reply to an address of any of the three services.</summary>
    public byte[] Of(Uri asked)
    {
        Dictionary<string, string> query = asked.Query.TrimStart('?').Split('&', StringSplitOptions.RemoveEmptyEntries)
            .Select(each => each.Split('=', 2)).ToDictionary(each => each[0], each => Uri.UnescapeDataString(each[1]));
        string[] path = asked.AbsolutePath.Trim('/').Split('/');
        return path switch
        {
            ["points", string point] => Encoding.UTF8.GetBytes(Point(point)),
            ["gridpoints", _, string cell] => Encoding.UTF8.GetBytes(Grid(cell)),
            ["access", ..] => JsonSerializer.SerializeToUtf8Bytes(Stations(query)),
            _ => JsonSerializer.SerializeToUtf8Bytes(Places(query)),
        };
    }

    // A cell has the number of its site, so that its reply can say where it lies.
    private static string Point(string point)
    {
        string[] numbers = point.Split(',');
        int place = FetchSites.PlaceOf(Number(numbers[0]), Number(numbers[1]));
        return string.Create(CultureInfo.InvariantCulture, $$$"""{"properties":{"gridId":"INV","gridX":{{{place}}},"gridY":0}}""");
    }

    private string Grid(string cell)
    {
        int place = int.Parse(cell.Split(',')[0], CultureInfo.InvariantCulture);
        Site site = FetchSites.At(place);
        return string.Create(CultureInfo.InvariantCulture, $$$"""
            {"geometry":{"type":"Polygon","coordinates":[[[{{{site.Longitude}}},{{{site.Latitude}}}]]]},
            "properties":{"gridId":"INV","gridX":{{{place}}},"gridY":0,"updateTime":"{{{clock.GetUtcNow():yyyy-MM-dd'T'HH:mm:sszzz}}}",{{{layers}}} } }
            """);
    }

    // The hours, of UTC, hold the noon and the early morning of each of the sites' zones, summer time or not.
    private static string Layers(DateTimeOffset now)
    {
        DateTimeOffset midnight = new(now.UtcDateTime.Date, TimeSpan.Zero);
        StringBuilder text = new();
        text.Append(Layer("maxTemperature", "wmoUnit:degC", midnight.AddHours(13), 24, "PT13H", ForecastDays, MaximumC));
        text.Append(',').Append(Layer("minTemperature", "wmoUnit:degC", midnight.AddHours(2), 24, "PT14H", ForecastDays, MinimumC));
        text.Append(',').Append(Layer("quantitativePrecipitation", "wmoUnit:mm", midnight, 6, "PT6H", ForecastDays * 4, 0.5));
        for (int i = 0; i < OtherLayers; i++) text.Append(',').Append(Layer($"other{i.ToString(CultureInfo.InvariantCulture)}", "wmoUnit:percent", midnight, 1, "PT1H", OtherEntries, 50));
        return text.ToString();
    }

    private static string Layer(string name, string unit, DateTimeOffset first, int everyHours, string length, int count, double value)
    {
        IEnumerable<string> entries = Enumerable.Range(0, count).Select(i =>
            string.Create(CultureInfo.InvariantCulture, $$"""{"validTime":"{{first.AddHours(i * everyHours):yyyy-MM-dd'T'HH:mm:sszzz}}/{{length}}","value":{{value}}}"""));
        return $$"""
            "{{name}}":{"uom":"{{unit}}","values":[{{string.Join(',', entries)}}]}
            """;
    }

    private static JsonArray Stations(Dictionary<string, string> query)
    {
        JsonArray rows = [];
        foreach (string station in query["stations"].Split(','))
        {
            Site site = FetchSites.OfStation(station);
            foreach (DateOnly day in Between(Day(query["startDate"]), Day(query["endDate"])))
            {
                rows.Add(new JsonObject
                {
                    ["STATION"] = station,
                    ["DATE"] = Text(day),
                    ["LATITUDE"] = Text(site.Latitude),
                    ["LONGITUDE"] = Text(site.Longitude),
                    ["ELEVATION"] = Text(site.ElevationM),
                    ["TMAX"] = Text(MaximumC),
                    ["TMAX_ATTRIBUTES"] = ",,W,2400",
                    ["TMIN"] = Text(MinimumC),
                    ["TMIN_ATTRIBUTES"] = ",,W,2400",
                    ["PRCP"] = Text(1.5),
                    ["PRCP_ATTRIBUTES"] = ",,W,2400",
                });
            }
        }

        return rows;
    }

    private JsonArray Places(Dictionary<string, string> query)
    {
        TimeZoneInfo zone = TimeZoneInfo.FindSystemTimeZoneById(query["timezone"]);
        DateOnly today = FetchSites.Today(zone.Id, clock.GetUtcNow());
        (DateOnly first, DateOnly last) = query.TryGetValue("start_date", out string? start)
            ? (Day(start), Day(query["end_date"]))
            : (today.AddDays(-int.Parse(query["past_days"], CultureInfo.InvariantCulture)), today.AddDays(int.Parse(query["forecast_days"], CultureInfo.InvariantCulture) - 1));
        IEnumerable<(string Latitude, string Longitude)> places = query["latitude"].Split(',').Zip(query["longitude"].Split(','));
        return [.. places.Select(place => Place(Number(place.Latitude), Number(place.Longitude), zone, [.. Between(first, last)], query["daily"].Split(',')))];
    }

    private JsonObject Place(double latitude, double longitude, TimeZoneInfo zone, DateOnly[] days, string[] names)
    {
        JsonObject units = new() { ["time"] = "iso8601" };
        JsonObject daily = new() { ["time"] = new JsonArray([.. days.Select(day => (JsonNode)Text(day))]) };
        foreach (string name in names)
        {
            (string unit, double value) = name switch
            {
                "temperature_2m_max" => ("°C", MaximumC),
                "temperature_2m_min" => ("°C", MinimumC),
                "temperature_2m_mean" => ("°C", 12.5),
                "precipitation_sum" => ("mm", 1.5),
                "shortwave_radiation_sum" => ("MJ/m²", 11.5),
                _ => ("%", 64),
            };
            units[name] = unit;
            daily[name] = new JsonArray([.. days.Select(_ => (JsonNode)value)]);
        }

        return new JsonObject
        {
            ["latitude"] = latitude,
            ["longitude"] = longitude,
            ["elevation"] = 250.0,
            ["utc_offset_seconds"] = zone.GetUtcOffset(clock.GetUtcNow()).TotalSeconds,
            ["timezone"] = zone.Id,
            ["daily_units"] = units,
            ["daily"] = daily,
        };
    }

    private static IEnumerable<DateOnly> Between(DateOnly first, DateOnly last) => Enumerable.Range(0, last.DayNumber - first.DayNumber + 1).Select(first.AddDays);

    private static DateOnly Day(string text) => DateOnly.ParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture);

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);

    private static string Text(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);

    private static string Text(double value) => value.ToString("0.0###", CultureInfo.InvariantCulture);
}
