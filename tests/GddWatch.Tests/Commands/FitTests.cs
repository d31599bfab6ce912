using System.Globalization;
using System.Text;
using System.Text.Json;
using System.Text.RegularExpressions;
using GddWatch.Configuration;
using Xunit;

namespace GddWatch.Tests.Commands;

public sealed class FitTests
{
    /// <summary>A smooth climate whose springs are early in one year and late in the next.</summary>
    private static readonly string Csv = SmoothWeather.Csv(
        new DateOnly(2009, 1, 1), new DateOnly(2021, 12, 31), day => 3 * Math.Cos(day.Year * 1.7) + 2 * Math.Sin(day.Year * 2.4) * Math.Cos(day.DayOfYear / 30.0));

    /// <summary>The openings of a window, as if somebody had seen them.</summary>
    private static async Task<string> SeenAsync(Workshop workshop, string treatment, string name, int most = 20)
    {
        Ran ran = await workshop.RunAsync("backtest", "--format", "json", "--treatment", treatment);
        var csv = new StringBuilder("site,event,date\n");
        foreach (JsonElement window in JsonDocument.Parse(ran.Output).RootElement.GetProperty("windows").EnumerateArray().Take(most))
        {
            csv.Append(CultureInfo.InvariantCulture, $"lawn,{name},{window.GetProperty("opens").GetString()}\n");
        }

        string file = Path.Combine(workshop.Folder, "seen.csv");
        await File.WriteAllTextAsync(file, csv.ToString(), TestContext.Current.CancellationToken);
        return file;
    }

    [Fact]
    public async Task The_threshold_that_dates_were_made_with_is_found_and_the_snippet_can_be_put_into_the_file()
    {
        using Workshop workshop = Workshop.WithOneLawn(Csv);
        string yaml = Path.Combine(workshop.Config, "treatments.yaml");
        string before = await File.ReadAllTextAsync(yaml, TestContext.Current.CancellationToken);
        Ran ran = await workshop.RunAsync("fit", "broadleaf-spring", "--observed", await SeenAsync(workshop, "broadleaf-spring", "broadleaf-spring"));
        Assert.True(ran.Code == 0, ran.Error);
        Assert.Equal(before, await File.ReadAllTextAsync(yaml, TestContext.Current.CancellationToken));
        Match snippet = Regex.Match(ran.Output, "heat-sum: \\{ reaches: (?<reaches>[0-9]+) °F-days, base: (?<base>[0-9.-]+) °F, method: simple average, from: 01-01 \\}", RegexOptions.None, TimeSpan.FromSeconds(10));
        Assert.True(snippet.Success, ran.Output);
        // Made with 70 °C-days above 10 °C, which is 126 °F-days above 50 °F.
        Assert.Equal(50, double.Parse(snippet.Groups["base"].ValueSpan, CultureInfo.InvariantCulture), 2.0);
        Assert.Contains("13 seasons", ran.Output, StringComparison.Ordinal);
        Assert.Contains("mean date of the other seasons", ran.Output, StringComparison.Ordinal);
        Assert.Contains("Yang, Logan and Coffey 1995", ran.Output, StringComparison.Ordinal);
        await File.WriteAllTextAsync(yaml, Regex.Replace(before, "heat-sum: \\{ reaches: 70 °C-days[^}]*\\}", snippet.Value, RegexOptions.None, TimeSpan.FromSeconds(10)), TestContext.Current.CancellationToken);
        Assert.NotNull(ConfigurationReader.Read(workshop.Config).Configuration);
    }

    [Fact]
    public async Task Something_that_no_treatment_has_is_fitted_by_heat_air_and_soil_each_with_the_errors_of_years_left_out()
    {
        using Workshop workshop = Workshop.WithOneLawn(Csv);
        string seen = await SeenAsync(workshop, "broadleaf-spring", "bud-break");
        Ran ran = await workshop.RunAsync("fit", "bud-break", "--observed", seen, "--season", "01-01 to 07-31", "--format", "json");
        Assert.True(ran.Code == 0, ran.Error);
        JsonElement json = JsonDocument.Parse(ran.Output).RootElement;
        JsonElement[] fits = [.. json.GetProperty("fits").EnumerateArray()];
        Assert.Equal(7, fits.Length);
        Assert.Equal(3, fits.Select(fit => fit.GetProperty("model").GetString()).Distinct().Count());
        Assert.All(fits, fit => Assert.True(fit.GetProperty("meanDateYearLeftOutErrorDays").GetDouble() > 1));
        // The soil of the record's first spring is not known from its start.
        Assert.Equal(13 + 13 + 12, json.GetProperty("events").GetArrayLength());
        foreach (JsonElement fit in fits) Assert.Matches("^(heat-sum|air-temperature|soil-temperature): \\{ .* \\}$", fit.GetProperty("snippet").GetString());
        Ran asked = await workshop.RunAsync("fit", "bud-break", "--observed", seen, "--season", "01-01 to 07-31", "--heat", "base 50 °F, upper 86 °F, double sine, horizontal, from 02-01");
        Assert.Contains("method: double sine, from: 02-01, upper: 86 °F, cutoff: horizontal }", asked.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Too_few_seasons_are_refused_with_the_number_that_is_needed()
    {
        using Workshop workshop = Workshop.WithOneLawn(Csv);
        Ran ran = await workshop.RunAsync("fit", "broadleaf-spring", "--observed", await SeenAsync(workshop, "broadleaf-spring", "broadleaf-spring", most: 5));
        Assert.Equal(1, ran.Code);
        Assert.Contains("at least 6", ran.Error, StringComparison.Ordinal);
        Assert.Empty(ran.Output);
    }

    [Fact]
    public async Task A_name_that_nobody_knows_is_wrong_usage_with_the_nearest_known_one()
    {
        using Workshop workshop = Workshop.WithOneLawn(Csv);
        Ran ran = await workshop.RunAsync("fit", "brodleaf-spring");
        Assert.Equal(2, ran.Code);
        Assert.Contains("\"broadleaf-spring\" is the nearest", ran.Error, StringComparison.Ordinal);
        Assert.Equal(2, (await workshop.RunAsync("fit", "broadleaf-spring", "--season", "spring")).Code);
        Assert.Equal(2, (await workshop.RunAsync("fit", "broadleaf-spring", "--heat", "base 50")).Code);
    }
}
