using System.Globalization;
using System.Text.Json.Nodes;

namespace GddWatch.Tests.Feeds.Services;

/// <summary>Replies in the shape that Open-Meteo documents (SEEN), with invented values that tell their place and day: the maximum of a day is a tenth of its day of the year.</summary>
internal static class OpenMeteoText
{
    /// <summary>The answer to what was asked, one place or several.</summary>
    public static string For(Asked asked, Action<JsonObject, int>? spoil = null, DateOnly? today = null)
    {
        string[] latitudes = asked["latitude"]!.Split(',');
        string[] longitudes = asked["longitude"]!.Split(',');
        JsonNode[] places = [.. latitudes.Select((latitude, i) => Place(asked, Number(latitude), Number(longitudes[i]), i, spoil, today ?? ServiceDesk.Today))];
        return places.Length == 1 ? places[0].ToJsonString() : new JsonArray(places).ToJsonString();
    }

    public static double MaximumOf(DateOnly day) => Math.Round(10 + (day.DayOfYear / 10.0), 1);

    private static JsonObject Place(Asked asked, double latitude, double longitude, int index, Action<JsonObject, int>? spoil, DateOnly today)
    {
        (DateOnly first, DateOnly last) = asked["start_date"] is { } start
            ? (Day(start), Day(asked["end_date"]!))
            : (today.AddDays(-int.Parse(asked["past_days"]!)), today.AddDays(int.Parse(asked["forecast_days"]!) - 1));
        DateOnly[] days = [.. Enumerable.Range(0, last.DayNumber - first.DayNumber + 1).Select(first.AddDays)];
        JsonObject units = new() { ["time"] = "iso8601" };
        JsonObject daily = new() { ["time"] = Array(days, day => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)) };
        foreach (string name in asked["daily"]!.Split(','))
        {
            units[name] = name switch { "precipitation_sum" => "mm", "shortwave_radiation_sum" => "MJ/m²", "relative_humidity_2m_mean" => "%", _ => "°C" };
            daily[name] = Array(days, day => name switch
            {
                "temperature_2m_max" => MaximumOf(day),
                "temperature_2m_min" => Math.Round(MaximumOf(day) - 12.5, 1),
                "temperature_2m_mean" => Math.Round(MaximumOf(day) - 6, 1),
                "precipitation_sum" => day.Day % 3 == 0 ? 4.2 : 0,
                "shortwave_radiation_sum" => 21.5,
                _ => 64,
            });
        }

        JsonObject place = new()
        {
            ["latitude"] = latitude + 0.02,
            ["longitude"] = longitude - 0.01,
            ["generationtime_ms"] = 0.5,
            ["utc_offset_seconds"] = -18000,
            ["timezone"] = asked["timezone"],
            ["timezone_abbreviation"] = "GMT-5",
            ["elevation"] = 250.0,
            ["daily_units"] = units,
            ["daily"] = daily,
        };
        spoil?.Invoke(place, index);
        return place;
    }

    public static JsonArray Array<T>(IEnumerable<DateOnly> days, Func<DateOnly, T> value) => new([.. days.Select(day => (JsonNode?)JsonValue.Create(value(day)))]);

    private static DateOnly Day(string text) => DateOnly.ParseExact(text, "yyyy-MM-dd", CultureInfo.InvariantCulture);

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);
}
