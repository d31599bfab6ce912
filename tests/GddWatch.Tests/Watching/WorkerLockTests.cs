using GddWatch.Tests.Commands;
using GddWatch.Watching;
using Xunit;

namespace GddWatch.Tests.Watching;

public sealed class WorkerLockTests
{
    [Fact]
    public async Task A_second_worker_on_the_same_folder_is_refused_with_who_is_there_and_since_when_until_the_first_has_ended()
    {
        using Workshop workshop = Workshop.WithOneLawn(SmoothWeather.Csv(new DateOnly(2025, 1, 1), new DateOnly(2026, 1, 14)));
        WorkerLock? first = WorkerLock.Take(workshop.Data, workshop.Clock, TimeZoneInfo.FindSystemTimeZoneById("America/Chicago"), out string free);
        Assert.NotNull(first);
        Assert.Equal("", free);
        Ran second = await workshop.RunAsync("watch", "--once");
        Assert.Equal(1, second.Code);
        Assert.Equal(
            $"Another worker (process {Environment.ProcessId}, since Thursday 15 January 2026 06:00:00 -06:00) is at work on the data folder {workshop.Data}. Two of them would tell everything twice. Stop that one first, or give this one another folder with --data.\n",
            second.Error);
        Assert.Empty(workshop.Mails);
        // The others look, record and replay beside it.
        Assert.Equal(0, (await workshop.RunAsync("status")).Code);
        Assert.Equal(0, (await workshop.RunAsync("record", "mowing", "--site", "lawn", "--on", "2026-01-10")).Code);
        Assert.Equal(0, (await workshop.RunAsync("replay", "--from", "2026-01-01", "--until", "2026-01-03")).Code);
        first.Dispose();
        Assert.Equal(0, (await workshop.RunAsync("watch", "--once")).Code);
    }

    [Fact]
    public async Task Two_replays_do_not_share_their_folder_either()
    {
        using Workshop workshop = Workshop.WithOneLawn(SmoothWeather.Csv(new DateOnly(2025, 1, 1), new DateOnly(2026, 1, 14)));
        using WorkerLock? other = WorkerLock.Take(DataFolder.Replay(workshop.Data), workshop.Clock, TimeZoneInfo.Utc, out _);
        Ran ran = await workshop.RunAsync("replay", "--from", "2026-01-01", "--until", "2026-01-03");
        Assert.Equal(1, ran.Code);
        Assert.Contains("Another worker (process", ran.Error, StringComparison.Ordinal);
    }
}
