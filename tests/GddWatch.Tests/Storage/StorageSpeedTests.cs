using System.Diagnostics;
using GddWatch.Agronomy.Changes;
using GddWatch.Storage;
using Xunit;

namespace GddWatch.Tests.Storage;

public sealed class StorageSpeedTests : IDisposable
{
    private readonly TemporaryFolder folder = new();

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public void Dispose() => folder.Dispose();

    // A bound far above what was measured, so that a busy machine passes and a wait for a lock in each commit does not.
    [Fact]
    public async Task A_year_of_passes_with_their_deliveries_takes_seconds_with_every_commit_flushed()
    {
        await using Database database = await Kept.OpenAsync(folder.File("a.db"), Stop);
        PassStore passes = new(database);
        WindowStore windows = new(database);
        ToldStore told = new(database);
        Outbox outbox = new(database);
        TimeSpan committing = TimeSpan.Zero;
        long start = Stopwatch.GetTimestamp();
        for (int day = 0; day < 365; day++)
        {
            DateTimeOffset now = Kept.Morning.AddDays(day);
            await windows.LoadAsync(Stop);
            await told.LoadAsync(Stop);
            long before = Stopwatch.GetTimestamp();
            await passes.CommitAsync(PassOf(day, now), Stop);
            committing += Stopwatch.GetElapsedTime(before);
            foreach (ClaimedMessage claimed in await outbox.ClaimDueAsync(now, TimeSpan.FromMinutes(5), 50, Stop))
                await outbox.RecordDeliveredAsync(claimed, "a.eml", now, Stop);
        }

        TimeSpan all = Stopwatch.GetElapsedTime(start);
        TestContext.Current.TestOutputHelper?.WriteLine(
            $"365 passes of 15 windows, {(await outbox.CountAsync(Stop)).Delivered} messages: {all.TotalSeconds:0.00} s, "
            + $"{committing.TotalMilliseconds / 365:0.00} ms a commit of a pass");
        Assert.InRange(all, TimeSpan.Zero, TimeSpan.FromSeconds(60));
    }

    private static PassResult PassOf(int day, DateTimeOffset now) => Kept.Pass() with
    {
        Day = Kept.Day.AddDays(day),
        At = now,
        Windows = [.. Enumerable.Range(0, 15).Select(i => Kept.Window(season: 2020 + i))],
        Messages = day % 6 > 0
            ? []
            : [.. Enumerable.Range(0, 3).Select(i => new QueuedMessage(
                Kept.Message($"<{day}.{i}@x>", $"r{i}@example.org", new NoticeKey("north-common", $"t{day}", 2026, NoticeKind.Opened))))],
    };
}
