using GddWatch.Storage;
using GddWatch.Storage.Dialects;
using Microsoft.Extensions.Time.Testing;
using Xunit;

namespace GddWatch.Tests.Storage;

public sealed class SchemaTests : IDisposable
{
    private static readonly SchemaChange Later = new("9001-later.sql", "alter table region_value add column note text; create table later (x integer) strict;");

    private static readonly SchemaChange Broken = new("9002-broken.sql", "create table half_done (x integer) strict; insert into no_such_table values (1);");

    private readonly TemporaryFolder folder = new();

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    private string Path => folder.File("a.db");

    public void Dispose() => folder.Dispose();

    [Fact]
    public async Task Opening_again_changes_nothing_and_makes_no_backup()
    {
        await (await OpenAsync()).DisposeAsync();
        byte[] before = await File.ReadAllBytesAsync(Path, Stop);

        await (await OpenAsync()).DisposeAsync();

        Assert.Equal(before, await File.ReadAllBytesAsync(Path, Stop));
        Assert.Equal([Path], Directory.GetFiles(folder.Path));
    }

    [Fact]
    public async Task An_older_database_is_copied_before_it_is_changed_and_the_copy_opens_as_it_was()
    {
        await using (Database old = await OpenAsync())
            await new RegionValues(old).KeepAsync("configuration", "before", Stop);

        await using (Database changed = await OpenAsync(Later))
        {
            Assert.Equal("before", await new RegionValues(changed).FindAsync("configuration", Stop));
            Assert.Equal(0, await changed.ReadAsync(work => work.SingleAsync<int>("select count(*) from later"), Stop));
            await new RegionValues(changed).KeepAsync("configuration", "after", Stop);
        }

        string backup = Path + ".20260412T110000Z.backup";
        Assert.Equal([Path, backup], Directory.GetFiles(folder.Path).Order(StringComparer.Ordinal));
        if (!OperatingSystem.IsWindows())
            Assert.Equal(Convert.ToInt32("600", 8), (int)File.GetUnixFileMode(backup));
        // A version without the change opens the copy and not the changed one.
        await using Database again = await Database.OpenAsync(backup, Clock(), Stop);
        Assert.Equal("before", await new RegionValues(again).FindAsync("configuration", Stop));
    }

    [Fact]
    public async Task A_backup_holds_what_still_stood_in_the_log_alone()
    {
        await using Database old = await OpenAsync();
        await new RegionValues(old).KeepAsync("configuration", "in the log", Stop);
        Assert.True(new FileInfo(Path + "-wal").Length > 0);

        await using Database changed = await OpenAsync(Later);

        await using Database again = await Database.OpenAsync(Path + ".20260412T110000Z.backup", Clock(), Stop);
        Assert.Equal("in the log", await new RegionValues(again).FindAsync("configuration", Stop));
    }

    [Fact]
    public async Task A_newer_database_is_refused_with_what_to_do()
    {
        await (await OpenAsync(Later)).DisposeAsync();

        StorageException fault = await Assert.ThrowsAsync<StorageException>(() => OpenAsync());

        Assert.Equal(
            $"The database '{Path}' was written by a newer version of this program (it has the change 9001-later.sql, unknown here). "
            + "Run that version or a later one, or put back the backup that was made before the change.",
            fault.Message);
    }

    [Fact]
    public async Task A_change_that_fails_leaves_the_database_as_it_was_for_the_version_before()
    {
        await using (Database old = await OpenAsync())
            await new RegionValues(old).KeepAsync("configuration", "c1", Stop);

        StorageException fault = await Assert.ThrowsAsync<StorageException>(() => OpenAsync(Later, Broken));

        Assert.Contains("the change 9002-broken.sql failed", fault.Message, StringComparison.Ordinal);
        await using Database again = await OpenAsync();
        Assert.Equal("c1", await new RegionValues(again).FindAsync("configuration", Stop));
        Assert.Equal(0, await again.ReadAsync(work => work.SingleAsync<int>("select count(*) from sqlite_schema where name in ('later', 'half_done')"), Stop));
    }

    [Fact]
    public async Task Two_that_start_together_on_nothing_both_find_a_whole_database()
    {
        for (int round = 0; round < 5; round++)
        {
            string path = folder.File($"together-{round}.db");
            Database[] both = await Task.WhenAll(
                Enumerable.Range(0, 2).Select(_ => Task.Run(() => Database.OpenAsync(path, Clock(), Stop), Stop)));
            foreach (Database one in both)
            {
                await new RegionValues(one).KeepAsync("configuration", "c", Stop);
                await one.DisposeAsync();
            }
        }
    }

    private static FakeTimeProvider Clock() => new(Kept.Morning);

    private Task<Database> OpenAsync(params SchemaChange[] more) =>
        Database.OpenAsync(Path, Clock(), [.. SchemaChange.OfSqlite(), .. more], TimeSpan.FromSeconds(5), Stop);
}
