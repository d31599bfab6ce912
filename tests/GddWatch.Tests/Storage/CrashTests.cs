using GddWatch.Agronomy.Journal;
using GddWatch.Agronomy.Windows;
using GddWatch.Storage;
using Microsoft.Data.Sqlite;
using Xunit;

namespace GddWatch.Tests.Storage;

/// <summary>
/// What a crash leaves. SQLite appends each commit to the log beside the database and folds it in later; as long as nothing is folded in, the file and any
/// beginning of that log is exactly what a kill or a power cut at that byte leaves (sqlite.org, Write-Ahead Logging, MEMORY). So every moment can be tried.
/// </summary>
public sealed class CrashTests : IDisposable
{
    private static readonly TimeSpan Hold = TimeSpan.FromMinutes(5);

    private readonly TemporaryFolder folder = new();

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public void Dispose() => folder.Dispose();

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task Cut_off_at_any_byte_the_log_gives_the_state_after_some_commit_and_never_half_of_one(bool rubbishBehind)
    {
        (List<string> states, byte[] file, byte[] log) = await LiveThroughAsync(folder.File("live.db"));
        Random chance = new(20260412);
        int[] cuts = [0, .. Enumerable.Range(0, 80).Select(_ => chance.Next(log.Length)).Order(), log.Length];

        int reached = 0;
        foreach (int cut in cuts)
        {
            string path = folder.File($"cut-{cut}.db");
            byte[] rubbish = new byte[rubbishBehind ? 5000 : 0];
            chance.NextBytes(rubbish);
            await File.WriteAllBytesAsync(path, file, Stop);
            await File.WriteAllBytesAsync(path + "-wal", [.. log[..cut], .. rubbish], Stop);

            await using Database database = await Kept.OpenAsync(path, Stop);
            int at = states.IndexOf(await KeptState.OfAsync(database, Stop));

            Assert.True(at >= reached, $"cut at {cut} of {log.Length}: state {at} after state {reached}");
            reached = at;
            // It goes on from there.
            await new PassStore(database).CommitAsync(Kept.Pass(Kept.Message("<after@x>", "z@example.org", Kept.Key())), Stop);
        }

        Assert.Equal(states.Count - 1, reached);
    }

    [Fact]
    public async Task A_connection_that_breaks_inside_a_transaction_leaves_nothing_of_it_and_no_lock()
    {
        string path = folder.File("a.db");
        await using Database database = await Kept.OpenAsync(path, Stop);
        await new PassStore(database).CommitAsync(Kept.Pass(Kept.Message("<1@x>", "a@example.org", Kept.Key())), Stop);
        string before = await KeptState.OfAsync(database, Stop);
        await using (SqliteConnection raw = new($"Data Source={path};Pooling=False"))
        {
            await raw.OpenAsync(Stop);
            await using SqliteCommand command = raw.CreateCommand();
            command.CommandText = "begin immediate; delete from told; update message set state = 'delivered'; update kept_window set state = 'closed';";
            await command.ExecuteNonQueryAsync(Stop);
            Assert.Equal(before, await KeptState.OfAsync(database, Stop));
        }

        Assert.Equal(before, await KeptState.OfAsync(database, Stop));
        Assert.Equal(1, await new PassStore(database).CommitAsync(Kept.Pass(Kept.Message("<2@x>", "b@example.org", Kept.Key())), Stop));
    }

    /// <summary>Passes, entries of the journal, claims and outcomes; the states after each, from nothing on, and the files as they lie while the database is still open.</summary>
    private static async Task<(List<string> States, byte[] File, byte[] Log)> LiveThroughAsync(string path)
    {
        await using Database database = await Kept.OpenAsync(path, Stop);
        PassStore passes = new(database);
        Outbox outbox = new(database);
        List<string> states = [await KeptState.OfAsync(database, Stop)];
        for (int day = 0; day < 8; day++)
        {
            DateTimeOffset now = Kept.Morning.AddDays(day);
            await passes.CommitAsync(PassOf(day, now), Stop);
            states.Add(await KeptState.OfAsync(database, Stop));
            // Several new entries, and several that mend those of the day before: all of them in one commit.
            await new JournalStore(database).RecordAsync([.. Enumerable.Range(0, 8).Select(i => new Mowing { SiteId = "a", On = Kept.Day.AddDays((4 * day) + i), Note = $"day {day}" })], null, now, Stop);
            states.Add(await KeptState.OfAsync(database, Stop));
            foreach (ClaimedMessage claimed in await outbox.ClaimDueAsync(now, Hold, 2, Stop))
            {
                states.Add(await KeptState.OfAsync(database, Stop));
                if (day % 3 == 1)
                    await outbox.RecordRefusedForNowAsync(claimed, "451 busy", now.AddHours(1), Stop);
                else
                    await outbox.RecordDeliveredAsync(claimed, "a.eml", now, Stop);
                states.Add(await KeptState.OfAsync(database, Stop));
            }
        }

        // Nothing was folded in yet, else the premise above does not hold.
        byte[] file = await ReadSharedAsync(path);
        byte[] log = await ReadSharedAsync(path + "-wal");
        Assert.True(file.Length <= 4096, $"{file.Length} bytes in the file itself");
        return (states, file, log);
    }

    private static PassResult PassOf(int day, DateTimeOffset now) => Kept.Pass(
        Kept.Message($"<{day}a@x>", "a@example.org", Kept.Key(season: 2026 + day)),
        Kept.Message($"<{day}b@x>", "b@example.org", Kept.Key(season: 2026 + day))) with
    {
        Day = Kept.Day.AddDays(day),
        At = now,
        Windows = [.. Enumerable.Range(0, 15).Select(i => Kept.Window(season: 2020 + i, state: (WindowState)((day + i) % 8)))],
        RegionValues = new Dictionary<string, string> { ["configuration"] = $"c{day}" },
    };

    private static async Task<byte[]> ReadSharedAsync(string path)
    {
        await using FileStream stream = new(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite);
        byte[] bytes = new byte[stream.Length];
        await stream.ReadExactlyAsync(bytes, Stop);
        return bytes;
    }
}
