using System.Globalization;
using GddWatch.Storage;
using GddWatch.Storage.Upkeep;
using GddWatch.Tests.Storage;
using GddWatch.Watching;
using Xunit;

namespace GddWatch.Tests.Commands;

public sealed class KeepTests : IDisposable
{
    private static readonly DateOnly Day = new(2025, 4, 25);

    private readonly Workshop workshop = Workshop.WithOneLawn(SmoothWeather.Csv(new DateOnly(2012, 1, 1), Day));

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public KeepTests() => workshop.PutClockTo(new DateTimeOffset(Day.AddDays(1).ToDateTime(new TimeOnly(12, 0)), TimeSpan.Zero));

    public void Dispose() => workshop.Dispose();

    [Fact]
    public async Task After_a_pass_all_is_well_and_what_was_spoilt_is_told_with_exit_code_1()
    {
        Assert.Equal(0, (await workshop.RunLettingTimePassAsync("watch", "--once")).Code);

        Ran well = await workshop.RunAsync("keep", "verify");
        await using (Database database = await workshop.Keeping.OpenAsync(Stop)) await database.WriteAsync(work => work.ExecuteAsync("update message set attempts = -3"), Stop);
        Ran spoilt = await workshop.RunAsync("keep", "verify");

        Assert.True(well.Code == 0, well.Output + well.Error);
        Assert.EndsWith("All is well.\n", well.Output, StringComparison.Ordinal);
        Assert.Equal(1, spoilt.Code);
        Assert.Contains("was tried -3 times.", spoilt.Output, StringComparison.Ordinal);
        Assert.EndsWith("Found: 1.\n", spoilt.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_copy_made_while_somebody_writes_holds_what_was_committed_and_is_never_written_over()
    {
        await workshop.RunLettingTimePassAsync("watch", "--once");
        await workshop.RunAsync("record", "mowing", "--site", "lawn", "--on", "2025-04-20");
        string copy = Path.Combine(workshop.Folder, "copy.db");
        await using Database database = await workshop.Keeping.OpenAsync(Stop);
        string expected = await KeptState.OfAsync(database, Stop);

        Ran ran = await workshop.RunAsync("keep", "backup", copy);
        Ran again = await workshop.RunAsync("keep", "backup", copy);
        string amidWriting = Path.Combine(workshop.Folder, "amid.db");
        await database.WriteAndUndoAsync(
            async work =>
            {
                await work.ExecuteAsync("delete from told");
                await database.BackUpAsync(amidWriting, Stop);
                return true;
            },
            Stop);

        Assert.True(ran.Code == 0, ran.Error);
        Assert.Equal(2, again.Code);
        Assert.Contains("it was left as it is", again.Error, StringComparison.Ordinal);
        Assert.Equal([copy], Directory.GetFiles(workshop.Folder, "copy.db*"));
        if (!OperatingSystem.IsWindows()) Assert.Equal(Convert.ToInt32("600", 8), (int)File.GetUnixFileMode(copy));
        foreach (string each in (string[])[copy, amidWriting])
        {
            await using Database opened = await Kept.OpenAsync(each, Stop);
            Assert.Equal(expected, await KeptState.OfAsync(opened, Stop));
        }
    }

    [Fact]
    public async Task An_export_holds_every_row_and_its_journal_is_read_back()
    {
        await workshop.RunLettingTimePassAsync("watch", "--once");
        await workshop.RunAsync("record", "mowing", "--site", "lawn", "--on", "2025-04-20", "--note", "größer, \"quoted\"");
        await workshop.RunAsync("record", "mowing", "--site", "lawn", "--on", "2025-04-20", "--note", "better");
        string folder = Path.Combine(workshop.Folder, "export");

        Ran ran = await workshop.RunAsync("keep", "export", folder);

        Assert.True(ran.Code == 0, ran.Error);
        await using (Database database = await workshop.Keeping.OpenAsync(Stop))
        {
            foreach (ExportedTable table in ExportedTables.All)
            {
                string[] lines = await File.ReadAllLinesAsync(Path.Combine(folder, $"{table.Name}.csv"), Stop);
                long rows = await database.ReadAsync(work => work.SingleAsync<long>($"select count(*) from {table.Name}"), Stop);
                Assert.Equal(string.Join(',', table.Columns.Select(column => column.Name)), lines[0]);
                Assert.Equal(rows + 1, lines.LongLength);
            }
        }

        Assert.Contains("seen_at: when it was first seen", await File.ReadAllTextAsync(Path.Combine(folder, "README.txt"), Stop), StringComparison.Ordinal);
        Assert.Empty(Directory.GetDirectories(workshop.Folder, "*.unfinished"));
        using Workshop other = Workshop.WithOneLawn(SmoothWeather.Csv(new DateOnly(2024, 1, 1), Day));
        other.PutClockTo(workshop.Clock.GetUtcNow());
        Ran imported = await other.RunAsync("record", "import", Path.Combine(folder, "journal.csv"));
        Assert.True(imported.Code == 0, imported.Error);
        Assert.Equal(["better"], (await Journals.LoadHistoryAsync(other.Keeping, Stop)).Select(kept => kept.Entry.Note));
        Assert.Equal(2, (await workshop.RunAsync("keep", "export", folder)).Code);
    }

    [Fact]
    public async Task Every_table_and_column_is_exported()
    {
        await using var place = new TestDatabase(DatabaseKind.File);
        await using Database database = await place.OpenAsync(Stop);

        IEnumerable<string> columns = await database.ReadAsync(
            work => work.QueryAsync<string>(
                "select t.name || '.' || c.name from sqlite_schema t join pragma_table_info(t.name) c where t.type = 'table' and t.name not like 'sqlite@_%' escape '@' and t.name not in ('schema_version', 'journal_entry') order by 1"),
            Stop);

        Assert.Equal(columns, ExportedTables.All.SelectMany(table => table.Columns.Select(column => $"{table.Name}.{column.Name}")).Order(StringComparer.Ordinal));
    }

    [Theory]
    [InlineData("1 years")]
    [InlineData("5")]
    [InlineData("5 days")]
    [InlineData("-5 years")]
    [InlineData("99999 years")]
    public async Task An_age_that_is_none_or_too_young_is_refused(string age)
    {
        Ran ran = await workshop.RunAsync("keep", "prune", "--older-than", age);

        Assert.Equal(2, ran.Code);
        Assert.Contains($"Found: \"{age}\"", ran.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_dry_run_says_what_pruning_then_does()
    {
        await workshop.RunLettingTimePassAsync("watch", "--once");
        workshop.PutClockTo(workshop.Clock.GetUtcNow().AddYears(6));

        Ran trial = await workshop.RunAsync("keep", "prune", "--older-than", "5 years", "--dry-run");
        Ran done = await workshop.RunAsync("keep", "prune", "--older-than", "5 years");
        Ran again = await workshop.RunAsync("keep", "prune", "--older-than", "5 years");

        Assert.StartsWith("Would be taken out, from before Sunday 26 April 2026: mails ", trial.Output, StringComparison.Ordinal);
        Assert.Equal(string.Join(' ', Figures(trial)), string.Join(' ', Figures(done)));
        Assert.NotEqual(0, Figures(done)[0]);
        Assert.Equal([0, 0, 0, 0], Figures(again));
        Assert.Equal(0, (await workshop.RunAsync("keep", "verify")).Code);
    }

    [Theory]
    [InlineData("verify")]
    [InlineData("backup", "copy.db")]
    [InlineData("export", "export")]
    [InlineData("prune", "--older-than", "5 years")]
    public async Task Where_nothing_is_kept_yet_that_is_said_and_nothing_is_made(params string[] arguments)
    {
        Ran ran = await workshop.RunAsync(["keep", .. arguments]);

        Assert.Equal(1, ran.Code);
        Assert.StartsWith("Nothing is kept in ", ran.Error, StringComparison.Ordinal);
        Assert.False(Directory.Exists(workshop.Data));
    }

    [Fact]
    public async Task All_of_it_works_on_a_server_too_save_the_copy_which_its_own_tools_make()
    {
        PostgresCluster cluster = await PostgresCluster.SharedAsync();
        string database = (await cluster.NewEmptyAsync()).ToString().Split(' ')[0];
        await File.WriteAllTextAsync(Path.Combine(workshop.Config, "appsettings.json"), $$"""{ "Storage": { "Kind": "postgresql", "Connection": "{{cluster.Connection(database)}}" } }""", Stop);

        Ran watched = await workshop.RunLettingTimePassAsync("watch", "--once");
        Ran verified = await workshop.RunAsync("keep", "verify");
        Ran copied = await workshop.RunAsync("keep", "backup", "copy.db");
        Ran exported = await workshop.RunAsync("keep", "export", Path.Combine(workshop.Folder, "export"));
        Ran status = await workshop.RunAsync("status");

        Assert.True(watched.Code == 0, watched.Error);
        Assert.NotEmpty(workshop.Mails);
        Assert.False(File.Exists(DataFolder.Database(workshop.Data)));
        // The throw-away server does not wait for the disk.
        Assert.Contains("Found: 1.", verified.Output, StringComparison.Ordinal);
        Assert.Contains("fsync", verified.Output, StringComparison.Ordinal);
        Assert.Equal(1, copied.Code);
        Assert.Contains("pg_dump", copied.Error, StringComparison.Ordinal);
        Assert.True(exported.Code == 0, exported.Error);
        Assert.True(status.Code == 0, status.Error);
    }

    private static int[] Figures(Ran ran) =>
        [.. ran.Output.Split(": ", 2)[1].Split(". ")[0].Split([' ', ',']).Where(word => word.All(char.IsAsciiDigit) && word.Length > 0).Select(word => int.Parse(word, CultureInfo.InvariantCulture))];
}
