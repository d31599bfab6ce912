using System.Collections.ObjectModel;
using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;
using CsCheck;
using GddWatch.Agronomy.Weather;
using GddWatch.Feeds.Services;
using Xunit;

namespace GddWatch.Tests.Feeds.Services;

/// <summary>
/// Thousands of spoilt replies of each service, always the same ones. Their number, over the three services together, is that of the environment variable
/// GDDWATCH_FUZZ_CASES; 5,100 without it.
/// </summary>
public sealed partial class MalformedRepliesTests
{
    private const ulong Seed = 20_260_520;
    private const string Station = "USW00099999";

    private static readonly string[] Junk =
    [
        "null", "true", "\"\"", "\"12.5\"", "{}", "[]", "[[", "}", "]", ",", ":", "\"", "1e999", "-1e308", "1e-320", "NaN", "Infinity", "-", "--5", "0012", "12,5", "99999", "-9999", "5.", ".5", "\\", "\\u0000",
        "\"\\ud800\"", "\u00e9", "\ud83d\ude00", "\0", "\"daily\":", "\"values\":", "\"STATION\":", "\"2026-05-18\"", "\"9999-12-31\"", "\"0001-01-01\"", "\"2026-05-18T00:00:00+00:00/PT13H\"",
        "\"0001-01-01T00:00:00+00:00/P7D\"", "\"9999-12-31T00:00:00+00:00/PT1H\"", "\"unixtime\"", "1e11", "\"wmoUnit:degF\"", "\"°F\"", "\"Asia/Tokyo\"", "{\"a\":{\"a\":{\"a\":{}}}}",
    ];

    // Half of the replies have whole values exchanged, so that most are still JSON; the others have any piece of text exchanged, or doubled with -1.
    private static readonly Gen<Change[]> Changes = Gen.OneOf(ChangesOf(ofValues: true), ChangesOf(ofValues: false));

    [Fact]
    public Task Open_Meteo() => ForEachAsync(
        ServiceKind.OpenMeteo,
        "/v1/forecast?latitude=41.6&longitude=-93.3&daily=temperature_2m_max,temperature_2m_min,temperature_2m_mean,precipitation_sum,shortwave_radiation_sum,relative_humidity_2m_mean&timezone=America%2FChicago&past_days=3&forecast_days=5",
        asked => OpenMeteoText.For(asked));

    [Fact]
    public Task Daily_summaries() => ForEachAsync(
        ServiceKind.NoaaDailySummaries,
        "/",
        _ => $"[{string.Join(',', Enumerable.Range(17, 3).Select(day => $$"""{"DATE":"2026-05-{{day}}","STATION":"{{Station}}","LATITUDE":"41.5","LONGITUDE":"-93.2","TMAX":" 2{{day % 7}}.{{day % 10}}","TMAX_ATTRIBUTES":",,W,2400","TMIN":"  9.4","PRCP":" 4.1","TAVG":"15.2"}"""))}]");

    [Fact]
    public Task Gridded_forecast() => ForEachAsync(
        ServiceKind.UsWeatherService,
        "/",
        _ => """
            {"geometry":{"type":"Polygon","coordinates":[[[-93.31,41.59],[-93.29,41.59],[-93.29,41.61],[-93.31,41.59]]]},
            "properties":{"gridId":"DMX","gridX":72,"gridY":48,"updateTime":"2026-05-20T12:00:00+00:00","elevation":{"value":250.5},
            "maxTemperature":{"uom":"wmoUnit:degC","values":[{"validTime":"2026-05-20T14:00:00+00:00/PT11H","value":24.5},{"validTime":"2026-05-21T12:00:00+00:00/PT13H","value":26.25}]},
            "minTemperature":{"uom":"wmoUnit:degC","values":[{"validTime":"2026-05-21T00:00:00+00:00/PT14H","value":12.5},{"validTime":"2026-05-22T00:00:00+00:00/PT14H","value":11.75}]},
            "quantitativePrecipitation":{"uom":"wmoUnit:mm","values":[{"validTime":"2026-05-21T00:00:00+00:00/PT12H","value":2.4},{"validTime":"2026-05-21T12:00:00+00:00/P1D","value":6}]}}}
            """);

    private static async Task ForEachAsync(ServiceKind kind, string target, Func<Asked, string> good)
    {
        string whole = good(new Asked(target, ReadOnlyDictionary<string, string>.Empty));
        byte[] said = Encoding.UTF8.GetBytes(whole);
        await using WeatherHost host = new(asked => asked.Path.StartsWith("/points", StringComparison.Ordinal)
            ? WeatherHost.Json("""{"properties":{"gridId":"DMX","gridX":72,"gridY":48}}""")
            : WeatherHost.Whole(200, said, "Content-Type: application/json"));
        using ServiceDesk desk = new();
        ServiceRequest request = ServiceDesk.Request(kind, host.Address, station: kind == ServiceKind.NoaaDailySummaries ? Station : null);
        ServiceReading unspoilt = Assert.Single(await desk.BeginAsync(request));
        Assert.Empty(unspoilt.Told());
        Assert.NotNull(unspoilt.Observed ?? unspoilt.Forecast?.Days);

        PCG chance = new(1, Seed);
        int used = 0;
        int times = (int.TryParse(Environment.GetEnvironmentVariable("GDDWATCH_FUZZ_CASES"), CultureInfo.InvariantCulture, out int cases) ? cases : 5100) / 3;
        for (int i = 0; i < times; i++)
        {
            string spoilt = Changes.Generate(chance, null, out _).Aggregate(whole, (text, change) => change.Of(text));
            said = Encoding.UTF8.GetBytes(spoilt);
            try
            {
                ServiceReading reading = Assert.Single(await desk.BeginAsync(request));
                AssertNothingInvented(reading, spoilt);
                Assert.All(reading.Faults, fault => Assert.True(fault.Problem.Length > 0 && fault.Accepted.Length > 0 && fault.ToString().Length < 1500, fault.ToString()));
                if (reading.Observed is null && reading.Forecast is null) Assert.NotEmpty(reading.Faults);
                else used++;
            }
            catch (Exception failure)
            {
                throw new InvalidOperationException($"Case {i} of {times}: {spoilt}", failure);
            }
        }

        // Neither is everything refused, nor nothing: else the cases show little.
        Assert.InRange(used, times / 100, times * 99 / 100);
    }

    private static void AssertNothingInvented(ServiceReading reading, string text)
    {
        Assert.True(reading.Observed is null || reading.Observed.LastDay < ServiceDesk.Today);
        Assert.True(reading.Forecast is null || reading.Forecast.Days.FirstDay >= ServiceDesk.Today);
        HashSet<double> written = [.. Numbers().Matches(text).Select(match => double.TryParse(match.ValueSpan, CultureInfo.InvariantCulture, out double value) ? value : double.NaN)];
        if (text.Contains("degF", StringComparison.Ordinal)) written.UnionWith([.. written.Where(double.IsFinite).Select(value => GddWatch.Agronomy.Quantities.Temperature.FromFahrenheit(value).Celsius)]);
        foreach (DailySeries series in new[] { reading.Observed, reading.Forecast?.Days }.OfType<DailySeries>())
        {
            foreach (WeatherVariable variable in Enum.GetValues<WeatherVariable>())
            {
                // The gridded forecast's rain is a share of what is written.
                if (variable == WeatherVariable.PrecipitationMm && reading.Request.Feed.Kind == ServiceKind.UsWeatherService) continue;
                foreach (double value in series.Column(variable))
                {
                    if (!double.IsNaN(value)) Assert.Contains(value, written);
                }
            }
        }
    }

    [GeneratedRegex(@"[-+]?(\d+\.?\d*|\.\d+)([eE][-+]?\d+)?", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Numbers();

    [GeneratedRegex("\"[^\"]*\"|-?\\d+(\\.\\d+)?", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex Values();

    private static Gen<Change[]> ChangesOf(bool ofValues) =>
        Gen.Select(Gen.Double[0, 1], Gen.Int[0, 40], Gen.Int[-1, Junk.Length - 1], (place, length, junk) => new Change(ofValues, place, length, junk)).Array[1, 4];

    private sealed record Change(bool IsOfValue, double Place, int Length, int JunkIndex)
    {
        public string Of(string text)
        {
            if (IsOfValue)
            {
                MatchCollection values = Values().Matches(text);
                Match value = values[Math.Min((int)(Place * values.Count), values.Count - 1)];
                return string.Concat(text.AsSpan(0, value.Index), JunkIndex < 0 ? "-0.5" : Junk[JunkIndex], text.AsSpan(value.Index + value.Length));
            }

            int at = (int)(Place * text.Length);
            int length = Math.Min(Length, text.Length - at);
            return JunkIndex < 0 ? text.Insert(at, text.Substring(at, length)) : string.Concat(text.AsSpan(0, at), Junk[JunkIndex], text.AsSpan(at + length));
        }
    }
}
