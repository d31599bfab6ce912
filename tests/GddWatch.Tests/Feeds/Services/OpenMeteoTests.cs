using System.Text.Json;
using System.Text.Json.Nodes;
using GddWatch.Agronomy.Weather;
using GddWatch.Feeds.Faults;
using GddWatch.Feeds.Services;
using Xunit;

namespace GddWatch.Tests.Feeds.Services;

/// <summary>Open-Meteo in its documented shape and in shapes that must not be believed.</summary>
public sealed class OpenMeteoTests
{
    [Fact]
    public async Task The_last_days_and_the_days_to_come_stay_apart()
    {
        await using WeatherHost host = new(asked => WeatherHost.Json(OpenMeteoText.For(asked)));
        using ServiceDesk desk = new();
        ServiceReading reading = await desk.FetchAsync(ServiceDesk.Request(ServiceKind.OpenMeteo, host.Address));

        Asked asked = Assert.Single(host.All);
        Assert.Equal(("/v1/forecast", "3", "America/Chicago", "250"), (asked.Path, asked["past_days"], asked["timezone"], asked["elevation"]));
        Assert.Equal((new DateOnly(2026, 5, 17), new DateOnly(2026, 5, 19)), (reading.Observed!.FirstDay, reading.Observed.LastDay));
        Assert.Equal((ServiceDesk.Today, 16), (reading.Forecast!.Days.FirstDay, reading.Forecast.Days.Count));
        Assert.Equal((ServiceDesk.Today, desk.Clock.GetUtcNow()), (reading.Forecast.IssuedOn, reading.Forecast.IssuedAt));
        Assert.Equal((23.9, 11.4, 0.0), (reading.Observed.MaximumAt("2026-05-19"), reading.Observed.At("2026-05-19"), reading.Observed.RainAt("2026-05-19")));
        Assert.Equal((24.0, 4.2), (reading.Forecast.Days.MaximumAt("2026-05-20"), reading.Forecast.Days.RainAt("2026-05-21")));
        Assert.Equal((21.5, 64.0), (reading.Observed.At("2026-05-17", WeatherVariable.SolarRadiationMJ), reading.Observed.At("2026-05-17", WeatherVariable.RelativeHumidityPercent)));
        Assert.All(reading.Forecast.Days.MaximumMarks.ToArray(), mark => Assert.Equal(Mark.Forecast, mark));
        Assert.Equal(41.62, reading.Position!.Value.Latitude, 6);
        Assert.Equal(FaultSeverity.Remark, Assert.Single(reading.Faults).Severity);
        Assert.Contains("computed by weather models", reading.Faults[0].Problem, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Older_days_come_from_the_archive_and_stand_over_those_of_the_forecast()
    {
        await using WeatherHost host = new(asked => WeatherHost.Json(OpenMeteoText.For(asked, (place, _) =>
        {
            if (asked.Path == "/v1/archive") place["daily"]!["temperature_2m_max"]![0] = 31.5;
        })));
        using ServiceDesk desk = new();
        ServiceReading reading = await desk.FetchAsync(ServiceDesk.Request(ServiceKind.OpenMeteo, host.Address, pastDays: 8));

        Assert.Equal(["/v1/archive", "/v1/forecast"], host.All.Select(each => each.Path));
        Assert.Equal(("2026-05-12", "2026-05-14"), (host.All.First()["start_date"], host.All.First()["end_date"]));
        Assert.Equal((31.5, 8), (reading.Observed.MaximumAt("2026-05-12"), reading.Observed!.Count));
    }

    [Fact]
    public async Task An_archive_that_fails_costs_the_last_days_and_the_forecast_nothing()
    {
        await using WeatherHost host = new(asked => asked.Path == "/v1/archive" ? WeatherHost.Whole(500, "boom") : WeatherHost.Json(OpenMeteoText.For(asked)));
        using ServiceDesk desk = new();
        ServiceReading reading = await desk.FetchAsync(ServiceDesk.Request(ServiceKind.OpenMeteo, host.Address, pastDays: 30));

        Assert.Equal((10, 16), (reading.Observed!.Count, reading.Forecast!.Days.Count));
        Fault fault = Assert.Single(reading.Told());
        Assert.Equal($"open-meteo at {host.Address}v1/archive", fault.File);
        Assert.Contains("HTTP 500", fault.Problem, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Many_sites_go_into_one_request_and_each_gets_its_own()
    {
        await using WeatherHost host = new(asked => WeatherHost.Json(OpenMeteoText.For(asked, (place, index) => place["daily"]!["temperature_2m_max"]![0] = 20 + (index * 0.5))));
        using ServiceDesk desk = new();
        ServiceRequest[] requests = [.. Enumerable.Range(0, 120).Select(i => ServiceDesk.Request(ServiceKind.OpenMeteo, host.Address, site: ServiceDesk.Site($"s{i}", latitude: 40 + (i * 0.01))))];
        IReadOnlyList<ServiceReading> readings = await desk.FetchAsync(requests);

        Assert.Equal(3, host.All.Count);
        Assert.Equal(requests, readings.Select(each => each.Request));
        Assert.All(readings.Index(), each => Assert.Equal(20 + (each.Index % 50 * 0.5), each.Item.Observed.MaximumAt("2026-05-17")));
    }

    [Fact]
    public async Task A_site_that_the_service_refuses_costs_the_others_of_its_request_nothing()
    {
        await using WeatherHost host = new(asked => asked["latitude"]!.Contains("-89", StringComparison.Ordinal)
            ? WeatherHost.Whole(400, """{"error":true,"reason":"Latitude must be elsewhere"}""", "Content-Type: application/json")
            : WeatherHost.Json(OpenMeteoText.For(asked)));
        using ServiceDesk desk = new();
        IReadOnlyList<ServiceReading> readings = await desk.FetchAsync(
            ServiceDesk.Request(ServiceKind.OpenMeteo, host.Address, site: ServiceDesk.Site("one")),
            ServiceDesk.Request(ServiceKind.OpenMeteo, host.Address, site: ServiceDesk.Site("pole", latitude: -89)),
            ServiceDesk.Request(ServiceKind.OpenMeteo, host.Address, site: ServiceDesk.Site("two", latitude: 42)));

        Assert.Equal([3, null, 3], readings.Select(each => each.Observed?.Count));
        Assert.Contains("Latitude must be elsewhere", readings[1].Refused("refused the request (HTTP 400)").Found, StringComparison.Ordinal);
    }

    // Captured answer of January 2024 (SEEN): times in seconds, two of the variables. The same numbers read here another way.
    [Fact]
    public async Task A_captured_answer_in_seconds_is_read_value_for_value()
    {
        string captured = await File.ReadAllTextAsync(SharedFiles.Find("weather/feeds/open-meteo/captured-forecast-lisbon-unixtime.json"), ServiceDesk.Stop);
        await using WeatherHost host = new(_ => WeatherHost.Json(captured));
        using ServiceDesk desk = new(new DateTimeOffset(2024, 1, 26, 10, 15, 0, TimeSpan.Zero));
        DateOnly today = new(2024, 1, 26);
        ServiceReading reading = await desk.FetchAsync(ServiceDesk.Request(ServiceKind.OpenMeteo, host.Address, pastDays: 0, ServiceDesk.Site("lisbon", 38.7223, -9.1393, "Europe/Lisbon"), today: today));

        JsonElement daily = JsonDocument.Parse(captured).RootElement.GetProperty("daily");
        Assert.Null(reading.Observed);
        Assert.Equal(daily.GetProperty("temperature_2m_max").EnumerateArray().Select(each => each.GetDouble()), reading.Forecast!.Days.MaximumAirC.ToArray());
        Assert.Equal(daily.GetProperty("temperature_2m_min").EnumerateArray().Select(each => each.GetDouble()), reading.Forecast.Days.MinimumAirC.ToArray());
        Assert.Equal(today, reading.Forecast.Days.FirstDay);
        Assert.Equal(["temperature_2m_mean", "precipitation_sum", "shortwave_radiation_sum", "relative_humidity_2m_mean"], reading.Told().Select(fault => fault.Column));
    }

    public static TheoryData<string, string> Unbelievable => new()
    {
        { "unit", "another unit" }, { "no unit", "another unit" }, { "shifted", "begin on Sat 2026-05-16, not on Sun 2026-05-17" }, { "duplicate", "not one after the other: after Sun 2026-05-17 comes Sun 2026-05-17" },
        { "hole", "not one after the other: after Sun 2026-05-17 comes Tue 2026-05-19" }, { "empty", "it has no days" }, { "short column", "values of temperature_2m_max" }, { "zone", "another time zone" },
        { "offset", "another time zone" }, { "elsewhere", "km from the site" }, { "no place", "km from the site" }, { "not a date", "is not a date" }, { "no daily", "no daily values" },
    };

    [Theory]
    [MemberData(nameof(Unbelievable))]
    public async Task A_reply_that_contradicts_what_was_asked_is_refused_for_its_site_alone(string how, string problem)
    {
        await using WeatherHost host = new(asked => WeatherHost.Json(OpenMeteoText.For(asked, (place, index) =>
        {
            if (index == 0) Spoil(place, how);
        })));
        using ServiceDesk desk = new();
        IReadOnlyList<ServiceReading> readings = await desk.FetchAsync(
            ServiceDesk.Request(ServiceKind.OpenMeteo, host.Address), ServiceDesk.Request(ServiceKind.OpenMeteo, host.Address, site: ServiceDesk.Site("other", latitude: 42)));

        readings[0].Refused(problem);
        Assert.Equal((3, 16), (readings[1].Observed!.Count, readings[1].Forecast!.Days.Count));
        Assert.Empty(readings[1].Told());
    }

    [Theory]
    [InlineData("\"23.7\"", "is not a number")]
    [InlineData("true", "is not a number")]
    [InlineData("1e999", "is not a number")]
    [InlineData("74.2", "outside everything measured")]
    [InlineData("-40", "minimum of Sun 2026-05-17 is above its maximum")]
    public async Task A_value_that_cannot_be_costs_that_value_alone(string value, string problem)
    {
        await using WeatherHost host = new(asked => WeatherHost.Json(
            OpenMeteoText.For(asked, (place, _) => place["daily"]!["temperature_2m_max"]![0] = "SPOILT").Replace("\"SPOILT\"", value, StringComparison.Ordinal)));
        using ServiceDesk desk = new();
        ServiceReading reading = await desk.FetchAsync(ServiceDesk.Request(ServiceKind.OpenMeteo, host.Address));

        Assert.Contains(problem, Assert.Single(reading.Told()).Problem, StringComparison.Ordinal);
        Assert.Null(reading.Observed.MaximumAt("2026-05-17"));
        Assert.Equal(23.8, reading.Observed.MaximumAt("2026-05-18"));
    }

    [Fact]
    public async Task Nulls_are_missing_values_and_no_fault()
    {
        await using WeatherHost host = new(asked => WeatherHost.Json(OpenMeteoText.For(asked, (place, _) => place["daily"]!["temperature_2m_min"]![1] = null)));
        using ServiceDesk desk = new();
        ServiceReading reading = await desk.FetchAsync(ServiceDesk.Request(ServiceKind.OpenMeteo, host.Address));

        Assert.Empty(reading.Told());
        Assert.Equal((null, 23.8), (reading.Observed.At("2026-05-18"), reading.Observed.MaximumAt("2026-05-18")));
    }

    // The reply has one distance to UTC for all of its days; that of Chicago was -6 h before 2026-03-08 and is -5 h after it (tzdata).
    [Theory]
    [InlineData(-21600, true)]
    [InlineData(-18000, true)]
    [InlineData(-14400, false)]
    public async Task Around_a_change_of_the_clocks_either_distance_to_UTC_is_the_sites(int seconds, bool isBelieved)
    {
        DateOnly today = new(2026, 3, 9);
        await using WeatherHost host = new(asked => WeatherHost.Json(OpenMeteoText.For(asked, (place, _) => place["utc_offset_seconds"] = seconds, today)));
        using ServiceDesk desk = new(new DateTimeOffset(2026, 3, 9, 15, 0, 0, TimeSpan.Zero));
        ServiceReading reading = await desk.FetchAsync(ServiceDesk.Request(ServiceKind.OpenMeteo, host.Address, today: today));

        if (isBelieved) Assert.Equal((3, OpenMeteoText.MaximumOf(new DateOnly(2026, 3, 8))), (reading.Observed!.Count, reading.Observed.MaximumAt("2026-03-08")));
        else reading.Refused("another time zone");
    }

    [Fact]
    public async Task Nothing_but_nulls_is_told()
    {
        await using WeatherHost host = new(asked => WeatherHost.Json(OpenMeteoText.For(asked, (place, _) =>
        {
            JsonObject daily = place["daily"]!.AsObject();
            foreach (string name in asked["daily"]!.Split(',')) daily[name] = new JsonArray([.. daily["time"]!.AsArray().Select(_ => (JsonNode?)null)]);
        })));
        using ServiceDesk desk = new();
        ServiceReading reading = await desk.FetchAsync(ServiceDesk.Request(ServiceKind.OpenMeteo, host.Address));

        Assert.True(reading.Observed is null && reading.Forecast is null);
        Assert.Equal(["The service knows no day from Sun 2026-05-17 on.", "The forecast has no day from Wed 2026-05-20 on."], reading.Faults.Select(fault => fault.Problem));
    }

    private static void Spoil(JsonObject place, string how)
    {
        JsonNode daily = place["daily"]!;
        JsonArray time = daily["time"]!.AsArray();
        DateOnly first = ServiceDesk.Today.AddDays(-3);
        switch (how)
        {
            case "unit": place["daily_units"]!["temperature_2m_max"] = "°F"; break;
            case "no unit": place["daily_units"]!.AsObject().Remove("temperature_2m_min"); break;
            case "shifted": daily["time"] = OpenMeteoText.Array(Enumerable.Range(-1, time.Count).Select(first.AddDays), day => $"{day:yyyy-MM-dd}"); break;
            case "duplicate": time[1] = "2026-05-17"; break;
            case "hole": time[1] = "2026-05-19"; break;
            case "empty": daily["time"] = new JsonArray(); break;
            case "short column": daily["temperature_2m_max"]!.AsArray().RemoveAt(4); break;
            case "zone": place["timezone"] = "Asia/Tokyo"; break;
            case "offset": place["utc_offset_seconds"] = 0; break;
            case "elsewhere": place["longitude"] = 93.3; break;
            case "no place": place["latitude"] = "41.6"; break;
            case "not a date": time[2] = "yesterday"; break;
            default: place.Remove("daily"); break;
        }
    }
}
