using GddWatch.Storage;
using GddWatch.Storage.Dialects;
using Microsoft.Data.Sqlite;
using Microsoft.Extensions.Time.Testing;
using Xunit;

namespace GddWatch.Tests.Storage;

public sealed class DatabaseTests : IDisposable
{
    private readonly TemporaryFolder folder = new();

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public void Dispose() => folder.Dispose();

    [Fact]
    public async Task A_new_database_makes_its_folders_and_is_for_its_owner_only()
    {
        string path = folder.File("deep/er/a.db");

        await using Database database = await Kept.OpenAsync(path, Stop);
        await new RegionValues(database).KeepAsync("configuration", "c1", Stop);

        Assert.Equal(path, database.Where);
        Assert.Equal("c1", await new RegionValues(database).FindAsync("configuration", Stop));
        if (OperatingSystem.IsWindows())
            return;
        Assert.Equal(Convert.ToInt32("700", 8), (int)File.GetUnixFileMode(Path.GetDirectoryName(path)!));
        Assert.Equal(Convert.ToInt32("600", 8), (int)File.GetUnixFileMode(path));
        Assert.Equal(Convert.ToInt32("600", 8), (int)File.GetUnixFileMode(path + "-wal"));
    }

    [Fact]
    public async Task It_writes_ahead_flushes_each_commit_and_holds_what_refers_to_what()
    {
        await using Database database = await Kept.OpenAsync(folder.File("a.db"), Stop);

        Assert.Equal("wal", await database.ReadAsync(work => work.SingleAsync<string>("pragma journal_mode"), Stop));
        Assert.Equal(2, await database.ReadAsync(work => work.SingleAsync<int>("pragma synchronous"), Stop));
        Assert.Equal(1, await database.ReadAsync(work => work.SingleAsync<int>("pragma foreign_keys"), Stop));
        await Assert.ThrowsAsync<StorageException>(() => database.WriteAsync(
            work => work.ExecuteAsync("insert into told values ('s', 't', 2026, 'opened', 'a', '2026-04-12', 'no such message')"), Stop));
    }

    [Theory]
    [InlineData("short")]
    [InlineData("site,date,tmin_c,tmax_c\nnorth-common,2026-04-12,3.1,14.0\n")]
    [InlineData(null)]
    public async Task A_file_that_is_no_database_is_refused_and_left_as_it_was(string? text)
    {
        string path = folder.File("a.db");
        text ??= string.Concat(Enumerable.Repeat("not a database at all. ", 2000));
        await File.WriteAllTextAsync(path, text, Stop);

        StorageException fault = await Assert.ThrowsAsync<StorageException>(() => Kept.OpenAsync(path, Stop));

        Assert.Equal($"The file '{path}' is not a database. Name another data folder, or move the file away and a new database is made.", fault.Message);
        Assert.Equal(text, await File.ReadAllTextAsync(path, Stop));
    }

    [Fact]
    public async Task A_damaged_database_is_refused_at_the_start()
    {
        string path = folder.File("a.db");
        await using (Database database = await Kept.OpenAsync(path, Stop))
            await new PassStore(database).CommitAsync(Kept.Pass([.. Enumerable.Range(0, 50).Select(i => Kept.Message($"<{i}@x>", $"r{i}@example.org", Kept.Key()))]), Stop);
        byte[] bytes = await File.ReadAllBytesAsync(path, Stop);
        bytes.AsSpan(4096 * 4, 4096 * 6).Fill(0x5A);
        await File.WriteAllBytesAsync(path, bytes, Stop);

        StorageException fault = await Assert.ThrowsAsync<StorageException>(() => Kept.OpenAsync(path, Stop));

        Assert.StartsWith($"The database '{path}' is damaged (", fault.Message, StringComparison.Ordinal);
        Assert.EndsWith("Put the latest backup in its place, or move it away to start afresh.", fault.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Another_programs_database_is_refused_and_not_touched()
    {
        string path = folder.File("a.db");
        await RunAsync(path, "create table recipes (name text)");

        StorageException fault = await Assert.ThrowsAsync<StorageException>(() => Kept.OpenAsync(path, Stop));

        Assert.Equal($"The database '{path}' belongs to another program (it holds the tables recipes). Name another data folder.", fault.Message);
        await RunAsync(path, "insert into recipes values ('soup')");
    }

    [Fact]
    public async Task A_folder_in_its_place_is_refused()
    {
        StorageException fault = await Assert.ThrowsAsync<StorageException>(() => Kept.OpenAsync(folder.Path, Stop));

        Assert.Equal($"'{folder.Path}' is a folder. Name a file for the database, or move the folder away.", fault.Message);
    }

    [Fact]
    public async Task A_file_where_its_folder_belongs_is_refused()
    {
        await File.WriteAllTextAsync(folder.File("var"), "", Stop);

        StorageException fault = await Assert.ThrowsAsync<StorageException>(() => Kept.OpenAsync(folder.File("var/a.db"), Stop));

        Assert.StartsWith($"The database '{folder.File("var/a.db")}' cannot be made (", fault.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_database_in_which_another_program_is_writing_is_refused_after_some_patience()
    {
        string path = folder.File("a.db");
        await (await Kept.OpenAsync(path, Stop)).DisposeAsync();
        await using SqliteConnection other = new($"Data Source={path};Pooling=False");
        await other.OpenAsync(Stop);
        await using SqliteTransaction writing = other.BeginTransaction();

        StorageException fault = await Assert.ThrowsAsync<StorageException>(
            () => Database.OpenAsync(path, new FakeTimeProvider(), SchemaChange.OfSqlite(), TimeSpan.FromSeconds(1), Stop));

        Assert.Equal(
            $"The database '{path}' is in use by another program. Stop that program, or wait until it has finished, and try again.", fault.Message);
        await writing.RollbackAsync(Stop);
        await (await Kept.OpenAsync(path, Stop)).DisposeAsync();
    }

    [Fact]
    public async Task A_database_that_may_only_be_read_is_refused()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows() || Environment.IsPrivilegedProcess, "The system lets this account write everywhere, so nothing is read-only to it.");
        string path = folder.File("a.db");
        await (await Kept.OpenAsync(path, Stop)).DisposeAsync();
        File.SetAttributes(path, FileAttributes.ReadOnly);

        StorageException fault = await Assert.ThrowsAsync<StorageException>(() => Kept.OpenAsync(path, Stop));

        File.SetAttributes(path, FileAttributes.Normal);
        Assert.Contains("may be read but not written", fault.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_folder_that_may_only_be_read_is_refused()
    {
        Assert.SkipWhen(OperatingSystem.IsWindows() || Environment.IsPrivilegedProcess, "The system lets this account write everywhere, so nothing is read-only to it.");
        string locked = Directory.CreateDirectory(folder.File("locked")).FullName;
        Chmod(locked, UnixFileMode.UserRead | UnixFileMode.UserExecute);

        StorageException fault = await Assert.ThrowsAsync<StorageException>(() => Kept.OpenAsync(Path.Combine(locked, "a.db"), Stop));

        Chmod(locked, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
        Assert.Contains("cannot be made", fault.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_state_that_no_version_knows_is_told_as_damage_with_what_was_found()
    {
        string path = folder.File("a.db");
        await using Database database = await Kept.OpenAsync(path, Stop);
        await new PassStore(database).CommitAsync(Kept.Pass(), Stop);
        await RunAsync(path, "update kept_window set since = 'Sunday'");

        StorageException fault = await Assert.ThrowsAsync<StorageException>(() => new WindowStore(database).LoadAsync(Stop));

        Assert.Contains("'Sunday' where a date such as 2026-04-12 belongs", fault.Message, StringComparison.Ordinal);
    }

    private static void Chmod(string path, UnixFileMode mode)
    {
        if (!OperatingSystem.IsWindows())
            File.SetUnixFileMode(path, mode);
    }

    private static async Task RunAsync(string path, string sql)
    {
        await using SqliteConnection raw = new($"Data Source={path};Pooling=False");
        await raw.OpenAsync(Stop);
        await using SqliteCommand command = raw.CreateCommand();
        command.CommandText = sql;
        await command.ExecuteNonQueryAsync(Stop);
    }
}
