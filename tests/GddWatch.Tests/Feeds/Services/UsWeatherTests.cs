using System.Globalization;
using System.Text.Json;
using GddWatch.Agronomy.Places;
using GddWatch.Feeds.Services;
using Xunit;

namespace GddWatch.Tests.Feeds.Services;

/// <summary>The gridded forecast of the US National Weather Service, its times turned into the site's days.</summary>
public sealed class UsWeatherTests
{
    private const string Point = """{"properties":{"gridId":"DMX","gridX":72,"gridY":48,"timeZone":"America/Chicago"}}""";

    [Fact]
    public async Task A_maximum_is_of_its_daytime_and_a_minimum_of_the_morning_it_ends_in()
    {
        // Central daylight time: 12:00 UTC is 07:00, 00:00 UTC is 19:00 of the evening before.
        await using WeatherHost host = Host(Grid(
            """{"validTime":"2026-05-20T14:00:00+00:00/PT11H","value":24.5},{"validTime":"2026-05-21T12:00:00+00:00/PT13H","value":26}""",
            """{"validTime":"2026-05-20T14:00:00+00:00/PT1H","value":20},{"validTime":"2026-05-21T00:00:00+00:00/PT14H","value":12.5}""",
            """{"validTime":"2026-05-20T14:00:00+00:00/PT4H","value":8},{"validTime":"2026-05-20T18:00:00+00:00/PT6H","value":1},{"validTime":"2026-05-21T00:00:00+00:00/PT6H","value":6},{"validTime":"2026-05-21T06:00:00+00:00/P1D","value":2.4}"""));
        using ServiceDesk desk = new();
        ServiceReading reading = await desk.FetchAsync(Request(host));

        Assert.Equal(["/points/41.6,-93.3", "/gridpoints/DMX/72,48"], host.All.Select(each => each.Path));
        Assert.Null(reading.Observed);
        Assert.Equal((24.5, null, null), (reading.Forecast!.Days.MaximumAt("2026-05-20"), reading.Forecast.Days.At("2026-05-20"), reading.Forecast.Days.RainAt("2026-05-20")));
        // Of the 6 mm until 01:00 one hour is of the 21st, of the 2.4 mm after it 23 of 24 hours.
        Assert.Equal((26.0, 12.5), (reading.Forecast.Days.MaximumAt("2026-05-21"), reading.Forecast.Days.At("2026-05-21")));
        Assert.Equal(3.3, reading.Forecast.Days.RainAt("2026-05-21")!.Value, 9);
        Assert.Equal(ServiceDesk.Today, reading.Forecast.IssuedOn);
        Assert.Empty(reading.Faults);
    }

    [Fact]
    public async Task A_first_entry_that_is_cut_short_says_nothing_of_its_day()
    {
        await using WeatherHost host = Host(Grid(
            """{"validTime":"2026-05-20T21:00:00+00:00/PT4H","value":19},{"validTime":"2026-05-21T12:00:00+00:00/PT13H","value":26}""",
            """{"validTime":"2026-05-20T08:00:00+00:00/PT6H","value":15},{"validTime":"2026-05-21T00:00:00+00:00/PT14H","value":12.5}""", ""));
        using ServiceDesk desk = new();
        ServiceReading reading = await desk.FetchAsync(Request(host));

        Assert.Equal(new DateOnly(2026, 5, 21), reading.Forecast!.Days.FirstDay);
        Assert.Equal((12.5, 26.0), (reading.Forecast.Days.At("2026-05-21"), reading.Forecast.Days.MaximumAt("2026-05-21")));
    }

    // Clocks in Chicago went on at 2:00 on 2026-03-08 and go back at 2:00 on 2026-11-01 (the second Sunday of March, the first of November; common knowledge, held by tzdata).
    [Theory]
    [InlineData("2026-03-08", "2026-03-08T06:00:00+00:00/PT23H", 2.3)]
    [InlineData("2026-11-01", "2026-11-01T05:00:00+00:00/PT25H", 2.5)]
    [InlineData("2026-11-01", "2026-11-01T05:00:00+00:00/PT24H", null)]
    [InlineData("2026-03-08", "2026-03-08T06:00:00+00:00/P1D", 2.3)]
    public async Task Days_of_23_and_25_hours_have_all_their_rain(string day, string time, double? rainMm)
    {
        double value = time.EndsWith("P1D", StringComparison.Ordinal) ? 2.4 : rainMm ?? 2.4;
        DateOnly today = DateOnly.ParseExact(day, "yyyy-MM-dd");
        await using WeatherHost host = Host(Grid(
            $$"""{"validTime":"{{day}}T15:00:00+00:00/PT9H","value":14}""", "", $$"""{"validTime":"{{time}}","value":{{value.ToString(CultureInfo.InvariantCulture)}}}""", today.AddDays(-1)));
        using ServiceDesk desk = new(new DateTimeOffset(today.ToDateTime(new TimeOnly(7, 0)), TimeSpan.Zero));
        ServiceReading reading = await desk.FetchAsync(ServiceDesk.Request(ServiceKind.UsWeatherService, host.Address, today: today));

        Assert.Equal(14, reading.Forecast!.Days.MaximumAt(day));
        if (rainMm is { } rain) Assert.Equal(rain, reading.Forecast.Days.RainAt(day)!.Value, 9);
        else Assert.Null(reading.Forecast.Days.RainAt(day));
    }

    [Fact]
    public async Task Fahrenheit_that_says_so_is_converted()
    {
        await using WeatherHost host = Host(Grid("""{"validTime":"2026-05-21T12:00:00+00:00/PT13H","value":77}""", """{"validTime":"2026-05-21T00:00:00+00:00/PT14H","value":50}""", "")
            .Replace("wmoUnit:degC", "wmoUnit:degF", StringComparison.Ordinal));
        using ServiceDesk desk = new();
        ServiceReading reading = await desk.FetchAsync(Request(host));

        Assert.Equal(25, reading.Forecast!.Days.MaximumAt("2026-05-21")!.Value, 9);
        Assert.Equal(10, reading.Forecast.Days.At("2026-05-21")!.Value, 9);
    }

    [Theory]
    [InlineData("wmoUnit:degC", "wmoUnit:K", "another unit")]
    [InlineData("\"uom\":\"wmoUnit:degC\",", "", "another unit")]
    [InlineData("2026-05-20T12:00:00+00:00", "2026-05-17T12:00:00+00:00", "not of today")]
    [InlineData("-93.31", "-80.31", "km from the site")]
    [InlineData("\"gridX\":72", "\"gridX\":73", "not about the grid cell")]
    [InlineData("minTemperature", "lowTemperature", "it has no minTemperature")]
    public async Task A_grid_reply_that_contradicts_what_was_asked_is_refused(string good, string spoilt, string problem)
    {
        string grid = Grid("""{"validTime":"2026-05-21T12:00:00+00:00/PT13H","value":26}""", """{"validTime":"2026-05-21T00:00:00+00:00/PT14H","value":12}""", "");
        Assert.Contains(good, grid, StringComparison.Ordinal);
        await using WeatherHost host = Host(grid.Replace(good, spoilt, StringComparison.Ordinal));
        using ServiceDesk desk = new();

        (await desk.FetchAsync(Request(host))).Refused(problem);
    }

    [Theory]
    [InlineData("""{"validTime":"2026-05-20T14:00:00+00:00/PT11H","value":"24.5"}""", "not a number")]
    [InlineData("""{"validTime":"date:now:hour 9 hours / PT13H","value":24.5}""", "time of a value cannot be read")]
    [InlineData("""{"validTime":"2026-05-20T14:00:00+00:00/P1M","value":24.5}""", "time of a value cannot be read")]
    [InlineData("""{"validTime":"2026-05-20T14:00:00+00:00/PT11H","value":240.5}""", "outside everything measured")]
    [InlineData("""{"validTime":"2026-05-21T13:00:00+00:00/PT12H","value":27}""", "second value that is another")]
    public async Task An_entry_that_cannot_be_costs_that_entry_alone(string entry, string problem)
    {
        await using WeatherHost host = Host(Grid($$"""{"validTime":"2026-05-21T12:00:00+00:00/PT13H","value":26},{{entry}}""", """{"validTime":"2026-05-21T00:00:00+00:00/PT14H","value":12}""", ""));
        using ServiceDesk desk = new();
        ServiceReading reading = await desk.FetchAsync(Request(host));

        Assert.Contains(problem, Assert.Single(reading.Faults).Problem, StringComparison.Ordinal);
        Assert.Equal((12.0, 26.0, null), (reading.Forecast!.Days.At("2026-05-21"), reading.Forecast.Days.MaximumAt("2026-05-21"), reading.Forecast.Days.MaximumAt("2026-05-20")));
    }

    [Theory]
    [InlineData("")]
    [InlineData("""{"validTime":"2026-05-18T12:00:00+00:00/PT13H","value":26}""")]
    [InlineData("""{"validTime":"2026-05-21T12:00:00+00:00/PT13H","value":null}""")]
    public async Task A_forecast_without_a_day_to_come_says_so(string maxima)
    {
        await using WeatherHost host = Host(Grid(maxima, "", ""));
        using ServiceDesk desk = new();
        ServiceReading reading = await desk.FetchAsync(Request(host));

        Assert.Null(reading.Forecast);
        Assert.Contains("no whole day from Wed 2026-05-20 on", Assert.Single(reading.Faults).Problem, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_grid_cell_of_a_point_is_asked_once()
    {
        await using WeatherHost host = Host(Grid("""{"validTime":"2026-05-21T12:00:00+00:00/PT13H","value":26}""", "", ""));
        using ServiceDesk desk = new();
        await desk.FetchAsync(Request(host));
        await desk.FetchAsync(Request(host));

        Assert.Equal(["/points/41.6,-93.3", "/gridpoints/DMX/72,48", "/gridpoints/DMX/72,48"], host.All.Select(each => each.Path));
    }

    [Fact]
    public async Task A_place_outside_the_country_is_told_as_such()
    {
        await using WeatherHost host = new(_ => WeatherHost.Whole(404, """{"title":"Data Unavailable For Requested Point"}""", "Content-Type: application/problem+json"));
        using ServiceDesk desk = new();

        (await desk.FetchAsync(Request(host))).Refused("no forecast for this place");
    }

    // A real answer, Tallahassee 58,65 of 2022-02-04 (SEEN). Expected by hand from its entries in Eastern time: a maximum of 12:00/PT13H UTC is of that day, a minimum of
    // 00:00/PT14H UTC too, the maximum of 21:00/PT4H is cut short.
    [Fact]
    public async Task A_real_answer_is_read_day_for_day()
    {
        string grid = await File.ReadAllTextAsync(SharedFiles.Find("weather/feeds/nws/pynws-fixtures/detailed_forecast.json"), ServiceDesk.Stop);
        await using WeatherHost host = new(asked => WeatherHost.Json(asked.Path.StartsWith("/points", StringComparison.Ordinal) ? """{"properties":{"gridId":"TAE","gridX":58,"gridY":65}}""" : grid));
        using ServiceDesk desk = new(new DateTimeOffset(2022, 2, 4, 4, 0, 0, TimeSpan.Zero));
        DateOnly today = new(2022, 2, 3);
        Site site = ServiceDesk.Site("coast", 30.02, -84.98, "America/New_York");
        ServiceReading reading = await desk.FetchAsync(ServiceDesk.Request(ServiceKind.UsWeatherService, host.Address, site: site, today: today));

        JsonElement properties = JsonDocument.Parse(grid).RootElement.GetProperty("properties");
        Assert.Equal(new DateOnly(2022, 2, 4), reading.Forecast!.Days.FirstDay);
        foreach (JsonElement entry in properties.GetProperty("maxTemperature").GetProperty("values").EnumerateArray().Skip(1))
        {
            Assert.Equal(entry.GetProperty("value").GetDouble(), reading.Forecast.Days.MaximumAt(entry.GetProperty("validTime").GetString()![..10]));
        }

        foreach (JsonElement entry in properties.GetProperty("minTemperature").GetProperty("values").EnumerateArray())
        {
            Assert.Equal(entry.GetProperty("value").GetDouble(), reading.Forecast.Days.At(entry.GetProperty("validTime").GetString()![..10]));
        }

        // The day from 05:00 UTC on: an hour of the six with 0, then 2.032, 4.826, 4.826, and 5 hours of the six with 3.048.
        Assert.Equal(2.032 + 4.826 + 4.826 + (3.048 * 5 / 6), reading.Forecast.Days.RainAt("2022-02-04")!.Value, 9);
        Assert.Empty(reading.Faults);
    }

    private static ServiceRequest Request(WeatherHost host) => ServiceDesk.Request(ServiceKind.UsWeatherService, host.Address);

    private static WeatherHost Host(string grid) => new(asked => WeatherHost.Whole(
        200, asked.Path.StartsWith("/points", StringComparison.Ordinal) ? Point : grid, "Content-Type: application/geo+json"));

    private static string Grid(string maxima, string minima, string rain, DateOnly? updated = null) => $$"""
        {"geometry":{"type":"Polygon","coordinates":[[[-93.31,41.59],[-93.29,41.59],[-93.29,41.61],[-93.31,41.61],[-93.31,41.59]]]},
        "properties":{"gridId":"DMX","gridX":72,"gridY":48,"updateTime":"{{(updated ?? ServiceDesk.Today):yyyy-MM-dd}}T12:00:00+00:00",
        "maxTemperature":{"uom":"wmoUnit:degC","values":[{{maxima}}]},
        "minTemperature":{"uom":"wmoUnit:degC","values":[{{minima}}]},
        "quantitativePrecipitation":{"uom":"wmoUnit:mm","values":[{{rain}}]} } }
        """;
}
