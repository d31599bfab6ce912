using GddWatch.Agronomy.Weather;
using GddWatch.Feeds.Services;
using Xunit;

namespace GddWatch.Tests.Feeds.Services;

/// <summary>NCEI's daily summaries: texts padded with blanks, absent elements, flags, and scales that must be refused.</summary>
public sealed class DailySummariesTests
{
    private const string Station = "USW00099999";

    [Fact]
    public async Task A_stations_days_are_read_with_what_is_there()
    {
        await using WeatherHost host = new(_ => WeatherHost.Json($$"""
            [
             {"DATE":"2026-05-17","STATION":"{{Station}}","LATITUDE":"41.5","LONGITUDE":"-93.2","ELEVATION":"260.1","TMAX":" 21.7","TMIN":"  9.4","PRCP":"  4.1","SNWD":"0","TAVG":"15.2"},
             {"DATE":"2026-05-19","STATION":"{{Station}}","TMAX":"20.0","TMAX_ATTRIBUTES":",,W,2400"}
            ]
            """));
        using ServiceDesk desk = new();
        ServiceReading reading = await desk.FetchAsync(Request(host));

        Asked asked = Assert.Single(host.All);
        Assert.Equal(("/access/services/data/v1", "daily-summaries", Station, "2026-05-17", "2026-05-19"), (asked.Path, asked["dataset"], asked["stations"], asked["startDate"], asked["endDate"]));
        Assert.Equal(("metric", "json", "true"), (asked["units"], asked["format"], asked["includeAttributes"]));
        Assert.Equal((9.4, 21.7, 4.1, 15.2), (reading.Observed.At("2026-05-17"), reading.Observed.MaximumAt("2026-05-17"), reading.Observed.RainAt("2026-05-17"), reading.Observed.At("2026-05-17", WeatherVariable.MeanAirC)));
        Assert.Equal((null, 20.0), (reading.Observed.At("2026-05-19"), reading.Observed.MaximumAt("2026-05-19")));
        Assert.Equal(41.5, reading.Position!.Value.Latitude);
        Assert.Null(reading.Forecast);
        Assert.Contains("One day is missing before this line: Mon 2026-05-18", Assert.Single(reading.Faults).Problem, StringComparison.Ordinal);
    }

    // Flags: readme.txt of GHCN-Daily (SEEN): the second is the quality flag, the first L a lagged temperature, P a presumed zero; the fourth the hour of observation.
    [Fact]
    public async Task A_flagged_value_is_not_taken_and_a_morning_maximum_is_of_the_day_before()
    {
        await using WeatherHost host = new(_ => WeatherHost.Json($$"""
            [
             {"DATE":"2026-05-18","STATION":"{{Station}}","TMAX":"33.3","TMAX_ATTRIBUTES":",I,7,0700","TMIN":"9.4","TMIN_ATTRIBUTES":",,7,0700","PRCP":"0.0","PRCP_ATTRIBUTES":"P,,7,"},
             {"DATE":"2026-05-19","STATION":"{{Station}}","TMAX":"22.2","TMAX_ATTRIBUTES":",,7,0700","TMIN":"10.6","TMIN_ATTRIBUTES":",,7,0700"}
            ]
            """));
        using ServiceDesk desk = new();
        ServiceReading reading = await desk.FetchAsync(Request(host));

        Assert.Equal((9.4, 22.2, null), (reading.Observed.At("2026-05-18"), reading.Observed.MaximumAt("2026-05-18"), reading.Observed.RainAt("2026-05-18")));
        Assert.Equal((10.6, null), (reading.Observed.At("2026-05-19"), reading.Observed.MaximumAt("2026-05-19")));
        Assert.Contains("2 values of station", Assert.Single(reading.Faults).Problem, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Several_stations_share_a_request_and_one_that_is_silent_costs_the_others_nothing()
    {
        await using WeatherHost host = new(_ => WeatherHost.Json("""
            [{"DATE":"2026-05-18","STATION":"USW00000001","TMAX":"20.5","TMIN":"8.5"},{"DATE":"2026-05-18","STATION":"USW00000002","TMAX":"21.5","TMIN":"9.5"}]
            """));
        using ServiceDesk desk = new();
        IReadOnlyList<ServiceReading> readings = await desk.FetchAsync(Request(host, "USW00000001"), Request(host, "USW00000003"), Request(host, "USW00000002"));

        Assert.Equal("USW00000001,USW00000003,USW00000002", Assert.Single(host.All)["stations"]);
        Assert.Equal([8.5, null, 9.5], readings.Select(each => each.Observed.At("2026-05-18")));
        Assert.Contains("no day of station USW00000003", Assert.Single(readings[1].Faults).Problem, StringComparison.Ordinal);
    }

    // Rows as public documents quote them (SEEN): without units the archive's own tenths, standard whole °F, metric with a decimal.
    [Theory]
    [InlineData("sample-no-units-param.json", "USW00094728", "2023-07-17", 2, "tenths are")]
    [InlineData("sample-units-standard.json", "USW00024028", "2023-11-24", 1, "all whole numbers")]
    public async Task A_reply_in_another_scale_is_refused(string sample, string station, string today, int pastDays, string problem)
    {
        ServiceReading reading = await FetchSampleAsync(sample, station, today, pastDays);

        reading.Refused(problem);
    }

    [Fact]
    public async Task A_quoted_metric_row_is_read()
    {
        ServiceReading reading = await FetchSampleAsync("sample-units-metric.json", "USW00094728", "2025-01-02", 1);

        Assert.Equal(10.6, reading.Observed.MaximumAt("2025-01-01"));
        Assert.Empty(reading.Faults);
    }

    // 20.5 °C is 68.9 °F: a May of 66 °F in °C would be hotter than any month on earth.
    [Fact]
    public async Task A_month_in_fahrenheit_with_decimals_is_refused()
    {
        string rows = string.Join(',', Enumerable.Range(1, 20).Select(i => $$"""{"DATE":"{{new DateOnly(2026, 4, 29).AddDays(i):yyyy-MM-dd}}","STATION":"{{Station}}","TMAX":"57.{{i % 10}}","TMIN":"48.5"}"""));
        await using WeatherHost host = new(_ => WeatherHost.Json($"[{rows}]"));
        using ServiceDesk desk = new();

        (await desk.FetchAsync(Request(host, pastDays: 20))).Refused("cannot be °C");
    }

    [Theory]
    [InlineData("""{"DATE":"2026-02-30","STATION":"USW00099999","TMAX":"20.5"}""", "not a date")]
    [InlineData("""{"DATE":"2026-05-20","STATION":"USW00099999","TMAX":"20.5","TMIN":"9.5"}""", "not one that was asked for")]
    [InlineData("""{"DATE":"2026-05-18","STATION":"USW00099999","TMAX":"hot","TMIN":"9.5"}""", "not a number")]
    [InlineData("""{"DATE":"2026-05-18","STATION":"USW00099999","TMAX":"60.5","TMIN":"9.5"}""", "outside everything measured")]
    [InlineData("""{"DATE":"2026-05-18","STATION":"USW00099999","TMAX":"2.5","TMIN":"9.5"}""", "minimum of Mon 2026-05-18 is above its maximum")]
    [InlineData("""{"DATE":"2026-05-17","STATION":"USW00099999","TMAX":"22.5","TMIN":"9.5"}""", "a second time with other values")]
    public async Task A_row_that_cannot_be_is_told_and_the_others_are_kept(string row, string problem)
    {
        await using WeatherHost host = new(_ => WeatherHost.Json($$"""[{"DATE":"2026-05-17","STATION":"{{Station}}","TMAX":"21.5","TMIN":"8.5"},{{row}}]"""));
        using ServiceDesk desk = new();
        ServiceReading reading = await desk.FetchAsync(Request(host));

        Assert.Contains(reading.Faults, fault => fault.Problem.Contains(problem, StringComparison.Ordinal));
        Assert.Equal((8.5, 21.5), (reading.Observed.At("2026-05-17"), reading.Observed.MaximumAt("2026-05-17")));
        Assert.True(reading.Observed!.LastDay < ServiceDesk.Today);
    }

    [Fact]
    public async Task An_object_instead_of_a_list_is_refused()
    {
        await using WeatherHost host = new(_ => WeatherHost.Json("""{"errorMessage":"stations"}"""));
        using ServiceDesk desk = new();

        (await desk.FetchAsync(Request(host))).Refused("not a list of days");
    }

    private static ServiceRequest Request(WeatherHost host, string station = Station, int pastDays = 3) =>
        ServiceDesk.Request(ServiceKind.NoaaDailySummaries, host.Address, pastDays, station: station);

    private static async Task<ServiceReading> FetchSampleAsync(string sample, string station, string today, int pastDays)
    {
        string text = await File.ReadAllTextAsync(SharedFiles.Find($"weather/feeds/ncei-access/{sample}"), ServiceDesk.Stop);
        Assert.Contains(station, text, StringComparison.Ordinal);
        await using WeatherHost host = new(_ => WeatherHost.Json(text));
        using ServiceDesk desk = new();
        return await desk.FetchAsync(ServiceDesk.Request(ServiceKind.NoaaDailySummaries, host.Address, pastDays, station: station, today: DateOnly.ParseExact(today, "yyyy-MM-dd")));
    }
}
