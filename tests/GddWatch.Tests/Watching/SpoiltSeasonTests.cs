using System.Globalization;
using System.Text.Json;
using GddWatch.Tests.Commands;
using Xunit;

namespace GddWatch.Tests.Watching;

/// <summary>A year with holes, a wrong reading, a false zero and a thermometer that sticks, in invented weather.</summary>
public sealed class SpoiltSeasonTests
{
    private static readonly DateOnly First = new(2012, 1, 1);
    private static readonly DateOnly Last = new(2025, 12, 31);

    [Fact]
    public async Task A_spoilt_year_lived_through_day_by_day_has_the_windows_of_the_backtest_and_no_wrong_value_opens_one()
    {
        using Workshop spoilt = Workshop.WithOneLawn(Spoilt());
        Dictionary<string, string?> lived = Windows((await spoilt.RunAsync("replay", "--format", "json")).Output, root => root);
        Dictionary<string, string?> tested = Windows((await spoilt.RunAsync("backtest", "--format", "json")).Output, root => root.GetProperty("windows"));
        string[] year = [.. lived.Keys.Where(tested.ContainsKey)];
        Assert.True(year.Length >= 8);
        Assert.All(year, key => Assert.Equal(tested[key], lived[key]));

        using Workshop clean = Workshop.WithOneLawn(SmoothWeather.Csv(First, Last));
        Dictionary<string, string?> unspoilt = Windows((await clean.RunAsync("backtest", "--format", "json")).Output, root => root.GetProperty("windows"));
        // The soil may be a little off where days had to be filled; the heat of a false 55 °C alone would open the pre-emergent weeks early.
        Assert.InRange(Opening(tested, "spring-pre-emergent 2025").DayNumber - Opening(unspoilt, "spring-pre-emergent 2025").DayNumber, -2, 2);
        Assert.InRange(Opening(tested, "grub-preventive 2025").DayNumber - Opening(unspoilt, "grub-preventive 2025").DayNumber, -2, 2);
    }

    [Fact]
    public async Task The_daily_table_shows_what_was_doubted_and_by_what_each_hole_was_filled()
    {
        using Workshop spoilt = Workshop.WithOneLawn(Spoilt());
        string[] lines = (await spoilt.RunAsync("daily", "lawn", "--format", "csv", "--from", "2025-03-01", "--until", "2025-04-30")).Output.Split('\n');
        string LineOf(string day) => lines.Single(line => line.StartsWith(day, StringComparison.Ordinal));
        Assert.Contains(",filled,", LineOf("2025-04-02"), StringComparison.Ordinal);
        Assert.Contains("the line between the days before and after, ±", LineOf("2025-04-02"), StringComparison.Ordinal);
        Assert.Contains(",suspect,", LineOf("2025-03-20"), StringComparison.Ordinal);
        Assert.Contains("t_max_c 55.00: ", LineOf("2025-03-20"), StringComparison.Ordinal);
        Assert.Contains(",measured,", LineOf("2025-03-22"), StringComparison.Ordinal);
    }

    private static string Spoilt()
    {
        var rows = new List<string>();
        foreach (string row in SmoothWeather.Csv(First, Last).TrimEnd('\n').Split('\n'))
        {
            string[] cells = row.Split(',');
            if (cells[0] is "2025-04-01" or "2025-04-02" or "2025-05-10") continue;
            if (cells[0] == "2025-03-20") cells[2] = "55.00";
            if (cells[0] == "2025-04-10") cells[1] = cells[2] = "0.00";
            bool sticks = DateOnly.TryParseExact(cells[0], "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out DateOnly day) && day >= new DateOnly(2025, 7, 20) && day < new DateOnly(2025, 8, 14);
            if (sticks) cells[2] = "29.90";
            rows.Add(string.Join(',', cells));
        }

        return string.Join('\n', rows) + "\n";
    }

    private static DateOnly Opening(Dictionary<string, string?> windows, string key) => DateOnly.ParseExact(windows[key]![..10], "yyyy-MM-dd", CultureInfo.InvariantCulture);

    private static Dictionary<string, string?> Windows(string json, Func<JsonElement, JsonElement> array)
    {
        using JsonDocument document = JsonDocument.Parse(json);
        return array(document.RootElement).EnumerateArray().ToDictionary(
            window => $"{window.GetProperty("treatment").GetString()} {window.GetProperty("season").GetInt32()}",
            window => (string?)$"{window.GetProperty("opens").GetString()} to {window.GetProperty("closes").GetString()}",
            StringComparer.Ordinal);
    }
}
