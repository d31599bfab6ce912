using System.Text;
using System.Text.Json;
using CsvHelper;
using Xunit;

namespace GddWatch.Tests.Commands;

/// <summary>The output that programs read: fields may be added, none renamed.</summary>
public sealed class OutputContractTests
{
    /// <summary>A window for each treatment and site whose turf it is for.</summary>
    private static int WindowsOfTheSample { get; } = Facts.Seasons.Sample.Region.Sites.Sum(site => Facts.Seasons.Sample.Treatments.Count(treatment => treatment.IsFor(site)));

    [Fact]
    public async Task Status_as_json_is_one_array_with_the_agreed_fields()
    {
        using Workshop workshop = Workshop.WithSamples();
        Ran ran = await workshop.RunAsync("status", "--on", "2025-05-15", "--format", "json");
        Assert.Equal(0, ran.Code);
        JsonElement rows = JsonDocument.Parse(ran.Output).RootElement;
        Assert.Equal(JsonValueKind.Array, rows.ValueKind);
        Assert.Equal(WindowsOfTheSample, rows.GetArrayLength());
        foreach (JsonElement row in rows.EnumerateArray())
        {
            Assert.Equal(["site", "treatment", "season", "state", "since", "reason", "chances"], row.EnumerateObject().Select(field => field.Name).Take(7));
            Assert.Contains(row.GetProperty("state").GetString(), (string[])["waiting", "nearing", "open", "closing", "closed", "held", "done", "unknown"]);
            Assert.True(DateOnly.TryParseExact(row.GetProperty("since").GetString(), "yyyy-MM-dd", out _));
            Assert.DoesNotContain("°F", row.GetProperty("reason").GetString(), StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task Status_hides_the_days_after_the_one_asked_about()
    {
        using Workshop workshop = Workshop.WithSamples();
        Ran then = await workshop.RunAsync("status", "--on", "2025-04-10", "--format", "json");
        foreach (string file in Directory.EnumerateFiles(Path.Combine(workshop.Folder, "data-samples")))
        {
            File.WriteAllLines(file, File.ReadAllLines(file).TakeWhile(line => !line.StartsWith("2025-04-11", StringComparison.Ordinal)));
        }

        Ran cut = await workshop.RunAsync("status", "--on", "2025-04-10", "--format", "json");
        Assert.Equal(then.Output, cut.Output);
    }

    [Fact]
    public async Task Backtest_as_json_has_windows_and_a_summary_with_the_agreed_fields()
    {
        using Workshop workshop = Workshop.WithSamples();
        Ran ran = await workshop.RunAsync("backtest", "--format", "json");
        Assert.Equal(0, ran.Code);
        JsonElement root = JsonDocument.Parse(ran.Output).RootElement;
        JsonElement windows = root.GetProperty("windows");
        Assert.Equal(WindowsOfTheSample, windows.EnumerateArray().Count(window => window.GetProperty("season").GetInt32() == 2024));
        foreach (JsonElement window in windows.EnumerateArray())
        {
            Assert.Equal(
                ["site", "treatment", "season", "opens", "closes", "opensBecause", "closesBecause"],
                window.EnumerateObject().Select(field => field.Name).Take(7));
            Assert.Equal(JsonValueKind.Number, window.GetProperty("season").ValueKind);
            Assert.True(window.GetProperty("opens").ValueKind is JsonValueKind.Null or JsonValueKind.String);
        }

        Assert.Equal(WindowsOfTheSample, root.GetProperty("summary").GetArrayLength());
    }

    [Fact]
    public async Task Backtest_as_csv_has_the_windows_that_json_has_in_the_same_order_and_words()
    {
        using Workshop workshop = Workshop.WithSamples();
        JsonElement[] json = [.. JsonDocument.Parse((await workshop.RunAsync("backtest", "--format", "json")).Output).RootElement.GetProperty("windows").EnumerateArray()];
        Ran ran = await workshop.RunAsync("backtest", "--format", "csv");
        Assert.True(ran.Code == 0, ran.Error);
        using CsvReader csv = CsvReader.Create(Encoding.UTF8.GetBytes(ran.Output), new CsvReaderOptions { HasHeader = false });
        List<string[]> rows = [];
        while (csv.Read()) rows.Add([.. Enumerable.Range(0, csv.FieldCount).Select(csv.GetString)]);
        Assert.Equal(json[0].EnumerateObject().Select(field => field.Name), rows[0]);
        Assert.Equal(json.Length, rows.Count - 1);
        for (int i = 0; i < json.Length; i++)
        {
            Assert.Equal(json[i].EnumerateObject().Select(field => field.Value.ValueKind is JsonValueKind.True or JsonValueKind.False ? field.Value.GetRawText() : field.Value.ToString()), rows[i + 1]);
        }
    }

    [Fact]
    public async Task The_daily_table_has_the_agreed_columns_in_order_and_an_asked_heat_sum_behind_them()
    {
        using Workshop workshop = Workshop.WithSamples();
        Ran ran = await workshop.RunAsync(
            "daily", "north-common", "--format", "csv", "--from", "2025-07-01", "--until", "2025-07-02",
            "--heat", "base 50 °F, upper 86 °F, single sine, horizontal, from 01-01", "--heat", "base 0 °C, simple average, from 03-01");
        Assert.Equal(0, ran.Code);
        string[] lines = ran.Output.Split('\n', StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal(3, lines.Length);
        Assert.StartsWith(
            "date,t_min_c,t_max_c,quality,soil_temperature_c,soil_temperature_sd_c,growth_potential_cool,growth_potential_warm,reference_et_mm,root_zone_depletion_mm,heat_sum_",
            lines[0],
            StringComparison.Ordinal);
        Assert.EndsWith(",heat_sum_base_10c_upper_30c_single_sine_horizontal_from_01_01,heat_sum_base_0c_simple_average_from_03_01", lines[0], StringComparison.Ordinal);
        Assert.StartsWith("2025-07-01,", lines[1], StringComparison.Ordinal);
        Assert.DoesNotContain("\r", ran.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_heat_sum_in_the_daily_table_is_the_plain_sum_of_the_days_from_its_start_whatever_rows_are_shown()
    {
        // Independent of the product: max(0, mean - base) added up by hand from the file.
        const string csv = "date,tmin,tmax,rain\n2024-12-31,10,30,0\n2025-01-01,5,25,0\n2025-01-02,-5,9,0\n2025-01-03,12,18,0\n";
        using Workshop workshop = Workshop.WithOneLawn(csv);
        Ran ran = await workshop.RunAsync("daily", "lawn", "--format", "csv", "--from", "2025-01-03", "--heat", "base 10 °C, simple average, from 01-01");
        string row = ran.Output.Split('\n')[1];
        Assert.EndsWith(",10.0000", row, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_heat_sum_that_cannot_be_read_says_what_is_accepted()
    {
        using Workshop workshop = Workshop.WithSamples();
        Ran ran = await workshop.RunAsync("daily", "north-common", "--heat", "base 50, sine");
        Assert.Equal(2, ran.Code);
        Assert.Contains("base 50 °F, single sine, from 01-01", ran.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_unknown_site_names_the_known_ones()
    {
        using Workshop workshop = Workshop.WithSamples();
        Ran ran = await workshop.RunAsync("daily", "northcommon");
        Assert.Equal(2, ran.Code);
        Assert.Contains("north-common", ran.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_name_with_brackets_is_a_name_like_any_other_and_no_command_writes_control_codes_into_a_file()
    {
        using Workshop workshop = Workshop.WithSamples();
        string region = Path.Combine(workshop.Config, "region.yaml");
        File.WriteAllText(region, File.ReadAllText(region).Replace("name: North Common", "name: \"North [common] {x}\"", StringComparison.Ordinal));
        foreach (string[] arguments in (string[][])[["status", "--on", "2025-04-20"], ["backtest"], ["check"], ["daily", "north-common", "--until", "2013-02-01"], ["replay", "--from", "2025-04-01", "--until", "2025-04-03"]])
        {
            Ran ran = await workshop.RunAsync(arguments);
            Assert.True(ran.Code == 0, ran.Error);
            Assert.Contains("North [common] {x}", ran.Output, StringComparison.Ordinal);
            Assert.DoesNotContain("\u001b", ran.Output, StringComparison.Ordinal);
        }
    }

    [Theory]
    [InlineData("watch", "--once")]
    [InlineData("status")]
    [InlineData("replay")]
    public async Task A_database_that_is_none_is_said_in_a_sentence_and_nothing_of_it_is_touched(params string[] arguments)
    {
        using Workshop workshop = Workshop.WithSamples();
        string folder = arguments[0] == "replay" ? Path.Combine(workshop.Data, "replay") : workshop.Data;
        Directory.CreateDirectory(folder);
        string database = Path.Combine(folder, "gddwatch.db");
        File.WriteAllBytes(database, [.. Enumerable.Repeat((byte)7, 3000)]);
        Ran ran = await workshop.RunAsync(arguments);
        Assert.Equal(1, ran.Code);
        Assert.Contains("gddwatch.db", ran.Error, StringComparison.Ordinal);
        Assert.DoesNotContain("   at GddWatch", ran.Error, StringComparison.Ordinal);
        Assert.Equal(3000, new FileInfo(database).Length);
    }

    [Fact]
    public async Task Check_reports_what_is_wrong_in_all_files_of_the_configuration_at_once()
    {
        using Workshop workshop = Workshop.WithSamples();
        string region = Path.Combine(workshop.Config, "region.yaml");
        File.WriteAllText(region, File.ReadAllText(region).Replace("elevation: 250 m", "elevation: 250", StringComparison.Ordinal));
        File.WriteAllText(Path.Combine(workshop.Config, "appsettings.json"), """{ "Schedule": { "At": "dawn" } }""");
        File.AppendAllText(Path.Combine(workshop.Config, "mail", "notices.txt.liquid"), "{% if %}");
        Ran ran = await workshop.RunAsync("check");
        Assert.Equal(2, ran.Code);
        Assert.Contains("region.yaml, line", ran.Output, StringComparison.Ordinal);
        Assert.Contains("dawn", ran.Output, StringComparison.Ordinal);
        Assert.Contains("notices.txt.liquid", ran.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Wrong_usage_exits_with_2()
    {
        using Workshop workshop = Workshop.WithSamples();
        Assert.Equal(2, (await workshop.RunAsync("stauts")).Code);
        Assert.Equal(2, (await workshop.RunAsync("status", "--on", "yesterday")).Code);
        Assert.Equal(2, (await workshop.RunAsync("status", "--format", "xml")).Code);
    }

    [Fact]
    public async Task Every_command_tells_people_about_windows_in_their_own_units_and_without_a_stack_trace()
    {
        using Workshop workshop = Workshop.WithSamples();
        foreach (string[] arguments in (string[][])[["status", "--on", "2025-04-20"], ["backtest"], ["check"], ["daily", "mill-green", "--from", "2025-06-01", "--until", "2025-06-03"]])
        {
            Ran ran = await workshop.RunAsync(arguments);
            Assert.Equal(0, ran.Code);
            Assert.NotEmpty(ran.Output);
            Assert.DoesNotContain("   at GddWatch", ran.Output + ran.Error, StringComparison.Ordinal);
        }
    }
}
