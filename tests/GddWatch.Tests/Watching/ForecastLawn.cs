using System.Globalization;
using System.Text.Json.Nodes;
using GddWatch.Tests.Commands;
using GddWatch.Tests.Feeds.Services;

namespace GddWatch.Tests.Watching;

/// <summary>
/// One lawn whose past weather comes from a file and whose forecast from a service on this machine. All weather is invented: a smooth climate whose years differ by a slow wave. The forecast is the days as they come, with an
/// error that the test decides.
/// </summary>
internal sealed class ForecastLawn : IAsyncDisposable
{
    private readonly WeatherHost host;
    private readonly Func<DateOnly, DateOnly, double> errorC;

    /// <summary>Sets it up.</summary>
    /// <param name="errorC">What the forecast of a day [the first] is off for another one [the second, °C]; not a number where it lacks that day.</param>
    /// <param name="recipient">What the one reader asked for, as in the configuration.</param>
    /// <param name="headsUp">The rule of the heads-up, as in the configuration.</param>
    public ForecastLawn(Func<DateOnly, DateOnly, double> errorC, string recipient, string headsUp)
    {
        this.errorC = errorC;
        host = new WeatherHost(asked => IsDown ? WeatherHost.Whole(500, "Oh no", "Content-Type: text/plain") : WeatherHost.Json(OpenMeteoText.For(asked, (place, _) => Fill(place), Today)));
        Workshop = new Workshop();
        File.WriteAllText(Path.Combine(Workshop.Config, "region.yaml"), $$"""
            region: { name: Test Region, time-zone: America/Chicago, units: us }
            sites:
              - id: lawn
                name: The Lawn
                latitude: 41.6
                longitude: -93.3
                elevation: 250 m
                turf: [cool-season]
                feeds:
                  - csv: lawn.csv
                    columns: { date: date, minimum: tmin, maximum: tmax, precipitation: rain }
                    units: { temperature: °C, precipitation: mm }
                  - service: open-meteo
                    base-address: {{host.Address}}
            recipients:
              - { address: adviser@example.org, sites: all, {{recipient}} }
            operator: { address: operator@example.org }
            """);
        string treatments = Path.Combine(Workshop.Config, "treatments.yaml");
        string text = File.ReadAllText(treatments);
        const string Rule = "heads-up: { within: 14 days, chance: 60 %, again-when-moved: 7 days }";
        if (!text.Contains(Rule, StringComparison.Ordinal)) throw new InvalidOperationException($"{treatments} does not say \"{Rule}\" any more.");
        File.WriteAllText(treatments, text.Replace(Rule, $"heads-up: {headsUp}", StringComparison.Ordinal));
    }

    /// <summary>Where its commands are run.</summary>
    public Workshop Workshop { get; }

    /// <summary>Whether the service is down.</summary>
    public bool IsDown { get; set; }

    private DateOnly Today { get; set; }

    /// <summary>Makes a pass on a day at an hour of the lawn's own clock, with the weather up to a day.</summary>
    public async Task<Ran> PassAsync(DateOnly day, int hour, DateOnly weatherUntil)
    {
        Today = day;
        Workshop.WriteWeather(SmoothWeather.Csv(new DateOnly(2013, 1, 1), weatherUntil, Anomaly));
        TimeZoneInfo zone = TimeZoneInfo.FindSystemTimeZoneById("America/Chicago");
        DateTime local = day.ToDateTime(new TimeOnly(hour, 0));
        Workshop.PutClockTo(new DateTimeOffset(local, zone.GetUtcOffset(local)));
        return await Workshop.RunLettingTimePassAsync("watch", "--once");
    }

    public async ValueTask DisposeAsync()
    {
        Workshop.Dispose();
        await host.DisposeAsync();
    }

    private static double Anomaly(DateOnly day) => 2.5 * Math.Sin((day.DayNumber / 9.0) + (day.Year * day.Year));

    /// <summary>Puts the same weather as in the file into a reply, and the errors into the days to come.</summary>
    private void Fill(JsonObject place)
    {
        JsonObject daily = place["daily"]!.AsObject();
        JsonArray days = daily["time"]!.AsArray();
        for (int i = 0; i < days.Count; i++)
        {
            DateOnly day = DateOnly.ParseExact((string)days[i]!, "yyyy-MM-dd", CultureInfo.InvariantCulture);
            double mean = SmoothWeather.MeanC(day) + Anomaly(day) + (day >= Today ? errorC(Today, day) : 0);
            foreach ((string name, double byC) in (ReadOnlySpan<(string, double)>)[("temperature_2m_min", -6), ("temperature_2m_mean", 0), ("temperature_2m_max", 6)])
            {
                daily[name]!.AsArray()[i] = double.IsNaN(mean) ? null : Math.Round(mean + byC, 2);
            }
        }
    }
}
