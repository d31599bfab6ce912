using System.Globalization;
using System.Text.Json.Nodes;
using GddWatch.Tests.Commands;
using GddWatch.Tests.Feeds.Services;
using Xunit;

namespace GddWatch.Tests.Watching;

/// <summary>The whole way of a day from an open service on this machine into the windows. The replies have the documented shape and invented values.</summary>
public sealed class WatchByServiceTests
{
    private static readonly DateOnly Today = new(2026, 5, 20);

    [Fact]
    public async Task Days_of_a_service_are_fetched_once_kept_and_judged_and_their_source_is_named()
    {
        await using var host = new WeatherHost(asked => WeatherHost.Json(OpenMeteoText.For(asked, UnlikeOtherYears, Today)));
        using Workshop workshop = LawnAt(host, Today);

        Assert.Equal(0, (await workshop.RunAsync("watch", "--once")).Code);

        int asked = host.All.Count;
        Ran status = await workshop.RunAsync("status");
        Assert.Equal(asked, host.All.Count);
        Assert.Contains("Open-Meteo.com (https://open-meteo.com/), CC BY 4.0", status.Output, StringComparison.Ordinal);
        Assert.DoesNotContain("There is no weather", status.Output, StringComparison.Ordinal);
        string[] rows = (await workshop.RunAsync("daily", "lawn", "--format", "csv")).Output.TrimEnd('\n').Split('\n');
        Assert.StartsWith("2015-01-01,", rows[1], StringComparison.Ordinal);
        Assert.StartsWith("2026-05-19,", rows[^1], StringComparison.Ordinal);
        Assert.Contains(",measured,", rows[^1], StringComparison.Ordinal);
        Assert.Contains("for non-commercial use", (await workshop.RunAsync("check")).Output, StringComparison.Ordinal);
        Assert.NotEmpty(workshop.Mails);
        Assert.All(workshop.Mails.Values, mail => Assert.Contains("Open-Meteo.com", System.Text.Encoding.UTF8.GetString(mail), StringComparison.Ordinal));
    }

    [Fact]
    public async Task The_next_day_asks_only_for_the_last_days_again_and_a_changed_value_is_marked_and_the_one_before_shown()
    {
        DateOnly today = Today;
        DateOnly changed = new(2026, 5, 10);
        await using var host = new WeatherHost(asked => WeatherHost.Json(OpenMeteoText.For(asked, (place, i) => Change(place, i, changed, today > Today ? 2 : 0), today)));
        using Workshop workshop = LawnAt(host, Today);
        await workshop.RunAsync("watch", "--once");
        host.All.Clear();
        today = Today.AddDays(1);
        workshop.PutClockTo(NoonOf(today));

        await workshop.RunAsync("watch", "--once");

        Assert.All(host.All.Where(asked => asked["start_date"] is not null), asked => Assert.Equal("2026-05-05", asked["start_date"]));
        string daily = (await workshop.RunAsync("daily", "lawn", "--from", "2026-05-09", "--until", "2026-05-12")).Output;
        Assert.Contains("corrected", daily, StringComparison.Ordinal);
        Assert.Contains("Changed by open-meteo: the maximum of Sunday 10 May 2026 was", daily, StringComparison.Ordinal);
        Assert.Equal(1, daily.Split("corrected").Length - 1);
    }

    [Fact]
    public async Task A_service_that_fails_costs_nothing_that_was_kept_and_the_worker_goes_on()
    {
        bool isDown = false;
        await using var host = new WeatherHost(asked => isDown
            ? WeatherHost.Whole(500, "<html>Oh no</html>", "Content-Type: text/html")
            : WeatherHost.Json(OpenMeteoText.For(asked, UnlikeOtherYears, Today)));
        using Workshop workshop = LawnAt(host, Today);
        await workshop.RunAsync("watch", "--once");
        isDown = true;
        workshop.PutClockTo(NoonOf(Today.AddDays(1)));

        Ran failing = await workshop.RunLettingTimePassAsync("watch", "--once");

        Assert.Equal(0, failing.Code);
        Assert.Contains("open-meteo", failing.Error, StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", failing.Error, StringComparison.Ordinal);
        Assert.Contains("2026-05-19,", (await workshop.RunAsync("daily", "lawn", "--format", "csv")).Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_site_whose_days_stopped_is_told_as_stale_even_where_another_feed_of_it_is_refused()
    {
        await using var host = new WeatherHost(_ => WeatherHost.Whole(404, "no", "Content-Type: text/plain"));
        using Workshop workshop = LawnAt(host, Today);
        string region = await File.ReadAllTextAsync(Path.Combine(workshop.Config, "region.yaml"), TestContext.Current.CancellationToken);
        await File.WriteAllTextAsync(Path.Combine(workshop.Config, "region.yaml"), region.Replace("      - service: open-meteo", """
                  - csv: lawn.csv
                    columns: { date: date, minimum: tmin, maximum: tmax, precipitation: rain }
                    units: { temperature: °C, precipitation: mm }
                  - service: open-meteo
            """, StringComparison.Ordinal), TestContext.Current.CancellationToken);
        workshop.WriteWeather(SmoothWeather.Csv(new DateOnly(2024, 1, 1), Today.AddDays(-20)));

        Ran ran = await workshop.RunLettingTimePassAsync("watch", "--once");

        string mail = string.Join(' ', System.Text.Encoding.UTF8.GetString(Assert.Single(workshop.Mails, each => each.Key.Contains("service", StringComparison.Ordinal)).Value).Replace("=\n", "", StringComparison.Ordinal).Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
        Assert.Contains("The last weather of The Lawn is from Thursday 30 April 2026", mail, StringComparison.Ordinal);
        Assert.Contains("open-meteo", mail, StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", ran.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Before_the_first_pass_a_service_has_nothing_and_every_command_says_what_to_do()
    {
        await using var host = new WeatherHost(asked => WeatherHost.Json(OpenMeteoText.For(asked, UnlikeOtherYears, Today)));
        using Workshop workshop = LawnAt(host, Today);
        Ran status = await workshop.RunAsync("status");
        Assert.Contains("Nothing has been fetched from this service yet", status.Output + status.Error, StringComparison.Ordinal);
        Assert.Contains("gddwatch watch --once", status.Output + status.Error, StringComparison.Ordinal);
        Assert.Empty(host.All);
    }

    private static Workshop LawnAt(WeatherHost host, DateOnly today)
    {
        var workshop = new Workshop();
        File.WriteAllText(Path.Combine(workshop.Config, "region.yaml"), $$"""
            region: { name: Test Region, time-zone: America/Chicago, units: metric }
            sites:
              - id: lawn
                name: The Lawn
                latitude: 41.6
                longitude: -93.3
                elevation: 250 m
                turf: [cool-season]
                history: [grubs]
                feeds:
                  - service: open-meteo
                    base-address: {{host.Address}}
            recipients:
              - { address: adviser@example.org, sites: all, treatments: all }
            operator: { address: operator@example.org }
            """);
        workshop.PutClockTo(NoonOf(today));
        return workshop;
    }

    private static DateTimeOffset NoonOf(DateOnly day) => new(day.ToDateTime(new TimeOnly(17, 0)), TimeSpan.Zero);

    /// <summary>Values that differ from year to year and from day to day, as weather does: the checks doubt copied months.</summary>
    private static void UnlikeOtherYears(JsonObject place, int index) => Change(place, index, default, 0);

    private static void Change(JsonObject place, int index, DateOnly changed, double byC)
    {
        JsonObject daily = place["daily"]!.AsObject();
        JsonArray days = daily["time"]!.AsArray();
        foreach (string name in (string[])["temperature_2m_max", "temperature_2m_min", "temperature_2m_mean"])
        {
            JsonArray values = daily[name]!.AsArray();
            for (int i = 0; i < values.Count; i++)
            {
                DateOnly day = DateOnly.ParseExact((string)days[i]!, "yyyy-MM-dd", CultureInfo.InvariantCulture);
                double more = day == changed && name.EndsWith("max", StringComparison.Ordinal) ? byC : 0;
                values[i] = Math.Round((double)values[i]! + 1.5 * Math.Sin(day.DayNumber * 0.7) + more, 1);
            }
        }
    }
}
