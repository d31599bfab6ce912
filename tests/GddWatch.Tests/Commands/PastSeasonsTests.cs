using System.Globalization;
using System.Text;
using System.Text.Json;
using System.Text.RegularExpressions;
using GddWatch.Commands.Backtesting;
using Xunit;

namespace GddWatch.Tests.Commands;

/// <summary>What backtest tells beyond the windows: scores, rivals, variants and the page.</summary>
public sealed class PastSeasonsTests
{
    /// <summary>A page of megabytes is searched well within it.</summary>
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(30);

    private static readonly string[] OnePreEmergent = ["--site", "north-common", "--treatment", "spring-pre-emergent"];

    private static async Task<JsonElement> JsonAsync(Workshop workshop, params string[] arguments)
    {
        Ran ran = await workshop.RunAsync(["backtest", "--format", "json", .. arguments]);
        Assert.True(ran.Code == 0, ran.Error);
        return JsonDocument.Parse(ran.Output).RootElement;
    }

    /// <summary>Crabgrass that comes up 14 days after each opening, and two days later than that in every other year.</summary>
    private static async Task<string> ObservedAsync(Workshop workshop)
    {
        var csv = new StringBuilder("site,event,date,season\n");
        foreach (JsonElement window in (await JsonAsync(workshop, OnePreEmergent)).GetProperty("windows").EnumerateArray())
        {
            DateOnly opens = DateOnly.Parse(window.GetProperty("opens").GetString()!, CultureInfo.InvariantCulture);
            csv.Append(CultureInfo.InvariantCulture, $"north-common,first-seedlings,{opens.AddDays(opens.Year % 2 == 0 ? 14 : 16):yyyy-MM-dd},\n");
        }

        string file = Path.Combine(workshop.Folder, "seen.csv");
        await File.WriteAllTextAsync(file, csv.ToString(), TestContext.Current.CancellationToken);
        return file;
    }

    [Fact]
    public async Task Windows_are_scored_against_what_was_seen_beside_the_calendar()
    {
        using Workshop workshop = Workshop.WithSamples();
        JsonElement json = await JsonAsync(workshop, [.. OnePreEmergent, "--observed", await ObservedAsync(workshop)]);
        JsonElement[] scores = [.. json.GetProperty("scores").EnumerateArray()];
        Assert.Equal(["window", "calendar", "best fixed date", "running mean of air"], scores.Select(score => score.GetProperty("rival").GetString()));
        // The window is early by 0 or 2 days: by 2 in every odd year.
        int odd = json.GetProperty("windows").EnumerateArray().Count(window => window.GetProperty("season").GetInt32() % 2 == 1);
        int all = json.GetProperty("windows").GetArrayLength();
        Assert.Equal(2.0 * odd / all, scores[0].GetProperty("meanAbsoluteErrorDays").GetDouble(), 1e-4);
        Assert.Equal(-2.0 * odd / all, scores[0].GetProperty("biasDays").GetDouble(), 1e-4);
        Assert.Equal(all, scores[0].GetProperty("hits").GetInt32());
        Assert.True(scores[0].GetProperty("skillAgainstCalendar").GetDouble() > 0.5);
        Assert.All(scores[1..], other => Assert.True(other.GetProperty("meanAbsoluteErrorDays").GetDouble() > 2));
        Assert.All(json.GetProperty("compared").EnumerateArray(), row => Assert.EndsWith("-04-15", row.GetProperty("calendar").GetString(), StringComparison.Ordinal));
        Assert.Equal(3, json.GetProperty("rivals").GetArrayLength());
    }

    [Fact]
    public async Task What_the_journal_has_seen_is_scored_too()
    {
        using Workshop workshop = Workshop.WithSamples();
        Assert.Equal(0, (await workshop.RunAsync("record", "sighting", "first-seedlings", "--site", "north-common", "--on", "2025-04-17")).Code);
        JsonElement json = await JsonAsync(workshop, OnePreEmergent);
        Assert.Equal(1, json.GetProperty("scores")[0].GetProperty("seasons").GetInt32());
    }

    [Fact]
    public async Task Other_thresholds_are_tried_and_the_one_in_use_moves_nothing()
    {
        using Workshop workshop = Workshop.WithSamples();
        JsonElement json = await JsonAsync(workshop, [.. OnePreEmergent, "--what-if", "soil threshold: 45 °F to 53 °F by 4 °F", "--what-if", "mean-over: 5 days, 10 days", "--from", "2015", "--until", "2022"]);
        JsonElement[] tried = [.. json.GetProperty("whatIf").EnumerateArray()];
        Assert.Equal(6, tried.Length);
        JsonElement inUse = Assert.Single(tried, each => each.GetProperty("whatIf").GetString() == "soil threshold 9.4 °C; mean-over 5 days");
        Assert.Equal(0, inUse.GetProperty("meanDaysLater").GetDouble());
        double lower = tried.First(each => each.GetProperty("whatIf").GetString()!.StartsWith("soil threshold 7.2", StringComparison.Ordinal)).GetProperty("meanDaysLater").GetDouble();
        double higher = tried.First(each => each.GetProperty("whatIf").GetString()!.StartsWith("soil threshold 11.7", StringComparison.Ordinal)).GetProperty("meanDaysLater").GetDouble();
        Assert.True(lower <= 0 && higher > 0, $"{lower} and {higher}");
        Assert.All(json.GetProperty("windows").EnumerateArray(), window => Assert.InRange(window.GetProperty("season").GetInt32(), 2015, 2022));
        Ran csv = await workshop.RunAsync(["backtest", "--format", "csv", "--table", "whatIfSites", .. OnePreEmergent, "--what-if", "depth: 2 in, 4 in"]);
        Assert.Equal(3, csv.Output.Split('\n', StringSplitOptions.RemoveEmptyEntries).Length);
    }

    [Fact]
    public async Task The_page_stands_alone_and_every_picture_and_table_says_what_it_is()
    {
        using Workshop workshop = Workshop.WithSamples();
        string file = Path.Combine(workshop.Folder, "out", "season.html");
        Ran ran = await workshop.RunAsync(["backtest", .. OnePreEmergent, "--observed", await ObservedAsync(workshop), "--report", file]);
        Assert.True(ran.Code == 0, ran.Error);
        string page = await File.ReadAllTextAsync(file, TestContext.Current.CancellationToken);
        Assert.Equal(["season.html"], Directory.EnumerateFiles(Path.GetDirectoryName(file)!).Select(Path.GetFileName));
        Assert.Contains("<html lang=\"en\">", page, StringComparison.Ordinal);
        string[] pictures = [.. Regex.Matches(page, "<img [^>]*>", RegexOptions.None, Patience).Select(match => match.Value)];
        // Dates, spread and threshold of the one treatment; soil and heat of the one site.
        Assert.Equal(5, pictures.Length);
        Assert.All(pictures, picture => Assert.Matches("src=\"data:image/png;base64,[^\"]+\" alt=\"[^\"]{40,}\"", picture));
        Assert.Equal(Regex.Count(page, "<table"), Regex.Count(page, "<caption><span>[^<]{10,}</span></caption>", RegexOptions.None, Patience));
        Assert.All(Regex.Matches(page, "<th(?!ead)[^>]*>", RegexOptions.None, Patience).Select(match => match.Value), head => Assert.Contains("scope=", head, StringComparison.Ordinal));
        // A sentence stands under each chart and under the scores, and no level of headings is left out.
        Assert.Equal(pictures.Length, Regex.Count(page, "<figcaption>[^<]{60,}\\.</figcaption>", RegexOptions.None, Patience));
        Assert.Matches("Scores against what was seen(?s:.)*?</table></div>\\s*<p class=\"note\">Each row is a way to name the day", page);
        int[] levels = [.. Regex.Matches(page, "<h(?<level>[1-6])", RegexOptions.None, Patience).Select(match => int.Parse(match.Groups["level"].ValueSpan, CultureInfo.InvariantCulture))];
        Assert.Equal(1, levels[0]);
        Assert.All(levels.Zip(levels.Skip(1)), pair => Assert.InRange(pair.Second, 2, pair.First + 1));
        // Nothing is loaded from elsewhere.
        Assert.DoesNotMatch("(src|href|srcset)=\"(?!data:|#)", page);
        Assert.DoesNotContain("{{", page, StringComparison.Ordinal);
        Assert.DoesNotContain("NaN", Regex.Replace(page, "base64,[^\"]+", "", RegexOptions.None, Patience), StringComparison.Ordinal);
        foreach (string word in (string[])["North Common", "Scores against what was seen", "15 April", "If the threshold were another", "invented", "@media print"]) Assert.Contains(word, page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Who_tries_other_bases_is_told_that_the_heat_threshold_stays()
    {
        using Workshop workshop = Workshop.WithSamples();
        string[] bases = ["backtest", "--site", "north-common", "--treatment", "grub-preventive", "--what-if", "base: 45 °F, 50 °F, 55 °F"];
        string file = Path.Combine(workshop.Folder, "season.html");
        const string Said = "the heat threshold stays at 350 °F-days";
        Assert.Contains(Said, (await workshop.RunAsync([.. bases, "--report", file])).Output, StringComparison.Ordinal);
        string page = await File.ReadAllTextAsync(file, TestContext.Current.CancellationToken);
        // Under the chart and under the table.
        Assert.Equal(2, Regex.Count(page, Said, RegexOptions.None, Patience));
        Assert.Contains("If the rule were another", page, StringComparison.Ordinal);
        JsonElement[] tried = [.. (await JsonAsync(workshop, bases[1..])).GetProperty("whatIf").EnumerateArray()];
        Assert.All(tried, each => Assert.Contains("the heat threshold stays at 194 °C-days", each.GetProperty("remark").GetString(), StringComparison.Ordinal));
        Ran together = await workshop.RunAsync([.. bases, "--what-if", "heat: 300 °F-days, 400 °F-days"]);
        Assert.Equal(0, together.Code);
        Assert.DoesNotContain("threshold stays", together.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Names_are_text_in_the_page_and_never_markup()
    {
        using Workshop workshop = Workshop.WithSamples();
        string region = Path.Combine(workshop.Config, "region.yaml");
        await File.WriteAllTextAsync(region, (await File.ReadAllTextAsync(region, TestContext.Current.CancellationToken)).Replace("name: North Common", "name: \"<script>alert(1)</script> & Sons\"", StringComparison.Ordinal), TestContext.Current.CancellationToken);
        string file = Path.Combine(workshop.Folder, "season.html");
        Assert.Equal(0, (await workshop.RunAsync(["backtest", .. OnePreEmergent, "--report", file])).Code);
        string page = await File.ReadAllTextAsync(file, TestContext.Current.CancellationToken);
        Assert.DoesNotContain("<script", page, StringComparison.Ordinal);
        Assert.Contains("&lt;script&gt;alert(1)&lt;/script&gt; &amp; Sons", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Who_stops_the_writing_of_a_file_finds_the_old_one_whole()
    {
        using Workshop workshop = new();
        string file = Path.Combine(workshop.Folder, "page", "season.html");
        await WholeFile.WriteAsync(file, "old", CancellationToken.None);
        using var stopped = new CancellationTokenSource();
        await stopped.CancelAsync();
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => WholeFile.WriteAsync(file, "new", stopped.Token));
        Assert.Equal("old", await File.ReadAllTextAsync(file, TestContext.Current.CancellationToken));
        Assert.Single(Directory.EnumerateFiles(Path.GetDirectoryName(file)!));
    }

    [Fact]
    public async Task All_faults_of_a_file_of_dates_are_told_at_once_and_the_good_rows_are_used()
    {
        using Workshop workshop = Workshop.WithSamples();
        string file = Path.Combine(workshop.Folder, "seen.csv");
        await File.WriteAllTextAsync(
            file,
            "site,event,date,season\nnorth-comon,first-seedlings,2020-04-20,\nnorth-common,first-seedlings,20.4.2020,\nnorth-common,,2020-04-20,\nnorth-common,first-seedlings,,\nnorth-common,first-seedlings,,2019\nnorth-common,first-seedlings,2021-04-20,\n",
            TestContext.Current.CancellationToken);
        Ran ran = await workshop.RunAsync(["backtest", "--format", "json", .. OnePreEmergent, "--observed", file]);
        Assert.Equal(0, ran.Code);
        Assert.Equal([2, 3, 4, 5], Regex.Matches(ran.Error, "line (?<line>[0-9]+)", RegexOptions.None, Patience).Select(match => int.Parse(match.Groups["line"].ValueSpan)));
        Assert.Contains("\"north-common\" is the nearest", ran.Error, StringComparison.Ordinal);
        JsonElement window = JsonDocument.Parse(ran.Output).RootElement.GetProperty("scores")[0];
        Assert.Equal((1, 1, 1), (window.GetProperty("seasons").GetInt32(), window.GetProperty("lookedForInVain").GetInt32(), window.GetProperty("falseOpenings").GetInt32()));
        Assert.Equal(2, (await workshop.RunAsync("backtest", "--observed", Path.Combine(workshop.Folder, "none.csv"))).Code);
    }

    [Fact]
    public async Task A_row_given_twice_and_a_day_outside_all_seasons_are_told_and_not_scored()
    {
        using Workshop workshop = Workshop.WithSamples();
        string file = Path.Combine(workshop.Folder, "seen.csv");
        const string Row = "north-common,first-seedlings,2021-04-20\n";
        await File.WriteAllTextAsync(file, $"site,event,date\n{Row}{Row}north-common,first-seedlings,1890-04-20\n", TestContext.Current.CancellationToken);
        Ran ran = await workshop.RunAsync(["backtest", "--format", "json", .. OnePreEmergent, "--observed", file]);
        Assert.Equal(0, ran.Code);
        Assert.Contains("line 3: The row says the same as line 2.", ran.Error, StringComparison.Ordinal);
        Assert.Contains("not scored: first-seedlings at north-common, Sunday 20 April 1890. Judged were 2013 to 2025.", ran.Error, StringComparison.Ordinal);
        Assert.Equal(1, JsonDocument.Parse(ran.Output).RootElement.GetProperty("scores")[0].GetProperty("seasons").GetInt32());
    }

    [Fact]
    public async Task What_was_seen_twice_in_a_season_counts_on_its_first_day_and_is_told_and_a_row_of_other_length_says_which_cell()
    {
        using Workshop workshop = Workshop.WithSamples();
        string file = Path.Combine(workshop.Folder, "seen.csv");
        await File.WriteAllTextAsync(
            file,
            "site,event,date,season\nnorth-common,first-seedlings,2021-04-28,\nnorth-common,first-seedlings,2021-04-20,\nnorth-common,first-seedlings\nnorth-common,first-seedlings,2020-04-20,,too,many\n",
            TestContext.Current.CancellationToken);
        Ran ran = await workshop.RunAsync(["backtest", "--format", "json", .. OnePreEmergent, "--observed", file]);
        Assert.Equal(0, ran.Code);
        Assert.Contains("of which the first day counts: first-seedlings at north-common on Tuesday 20 April 2021 and on Wednesday 28 April 2021.", ran.Error, StringComparison.Ordinal);
        Assert.Contains("line 4, column date: The row has 2 cells and the header 4: this one is the first that is missing.", ran.Error, StringComparison.Ordinal);
        Assert.Contains("The row has 6 cells and the header 4: this is the first one too many.", ran.Error, StringComparison.Ordinal);
        JsonElement score = JsonDocument.Parse(ran.Output).RootElement.GetProperty("scores")[0];
        Assert.Equal(1, score.GetProperty("seasons").GetInt32());
        Ran alone = await workshop.RunAsync(["backtest", "--format", "json", .. OnePreEmergent, "--observed", await OneDateAsync(workshop, "2021-04-20")]);
        Assert.Equal(score.GetRawText(), JsonDocument.Parse(alone.Output).RootElement.GetProperty("scores")[0].GetRawText());
    }

    private static async Task<string> OneDateAsync(Workshop workshop, string day)
    {
        string file = Path.Combine(workshop.Folder, "one.csv");
        await File.WriteAllTextAsync(file, $"site,event,date\nnorth-common,first-seedlings,{day}\n", TestContext.Current.CancellationToken);
        return file;
    }

    [Fact]
    public async Task Wrong_options_are_wrong_usage_and_all_of_them_are_told()
    {
        using Workshop workshop = Workshop.WithSamples();
        Ran ran = await workshop.RunAsync("backtest", "--site", "nowhere", "--treatment", "spring-preemergent", "--from", "2020", "--until", "2010", "--within", "a week", "--what-if", "colour: red", "--report", "season.pdf");
        Assert.Equal(2, ran.Code);
        foreach (string part in (string[])["--site", "\"spring-pre-emergent\" is the nearest", "--until 2010", "--within", "colour", "season.pdf"]) Assert.Contains(part, ran.Error, StringComparison.Ordinal);
        Assert.Equal(2, (await workshop.RunAsync("backtest", "--what-if", "heat: 300")).Code);
        Assert.Equal(2, (await workshop.RunAsync("backtest", "--table", "windoes")).Code);
    }
}
