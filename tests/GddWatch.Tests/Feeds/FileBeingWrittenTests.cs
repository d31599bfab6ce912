using GddWatch.Feeds;
using GddWatch.Feeds.Faults;
using Microsoft.Extensions.Time.Testing;
using Xunit;

namespace GddWatch.Tests.Feeds;

/// <summary>A file that is being written while it is read.</summary>
public sealed class FileBeingWrittenTests : IDisposable
{
    private const string Good = "2024-05-01,1,11,0";

    private readonly FeedFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Fact]
    public async Task A_file_changed_within_the_last_minute_loses_its_unfinished_line()
    {
        folder.With($"date,tmin,tmax,rain\r\n{Good}\r\n2024-05-02,2,1");
        DateTimeOffset changed = new(2024, 5, 2, 12, 0, 0, TimeSpan.Zero);
        File.SetLastWriteTimeUtc(Path.Combine(folder.Root, "days.csv"), changed.UtcDateTime);

        FeedReading early = await folder.ReadAsync(clock: new FakeTimeProvider(changed.AddSeconds(59)));
        FeedReading late = await folder.ReadAsync(clock: new FakeTimeProvider(changed.AddSeconds(61)));

        Assert.Equal((1.0, null), (early.At("2024-05-01"), early.At("2024-05-02")));
        Assert.Equal((FaultSeverity.LeftOut, 3, "2024-05-02,2,1"), (early.OnlyFault().Severity, early.OnlyFault().Line, early.OnlyFault().Found));
        Assert.Contains("still being written", early.OnlyFault().Problem, StringComparison.Ordinal);
        Assert.Contains("3 fields", late.OnlyFault().Problem, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_file_changed_within_the_last_minute_keeps_a_finished_last_line()
    {
        folder.With($"date,tmin,tmax,rain\n{Good}\n");
        DateTimeOffset changed = new(2024, 5, 2, 12, 0, 0, TimeSpan.Zero);
        File.SetLastWriteTimeUtc(Path.Combine(folder.Root, "days.csv"), changed.UtcDateTime);

        Assert.Equal(1.0, (await folder.ReadAsync(clock: new FakeTimeProvider(changed))).At("2024-05-01"));
    }

    [Fact]
    public async Task A_file_that_grows_while_it_is_read_loses_its_unfinished_line()
    {
        folder.With($"date,tmin,tmax,rain\n{Good}\n2024-05-02,2,1");
        string path = Path.Combine(folder.Root, "days.csv");
        FeedReading reading = await folder.ReadAsync(clock: new WhileReading(() => File.AppendAllText(path, "2,0\n")));

        Assert.Equal((1.0, null), (reading.At("2024-05-01"), reading.At("2024-05-02")));
        Assert.Contains("still being written", reading.OnlyFault().Problem, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_file_that_another_program_holds_open_for_writing_is_read()
    {
        folder.With($"date,tmin,tmax,rain\n{Good}\n");
        await using FileStream writer = new(Path.Combine(folder.Root, "days.csv"), FileMode.Open, FileAccess.ReadWrite, FileShare.ReadWrite);

        Assert.Equal(1.0, (await folder.ReadAsync()).At("2024-05-01"));
    }

    /// <summary>Does something at the moment when the reader, having taken the bytes, asks for the time.</summary>
    private sealed class WhileReading(Action happens) : TimeProvider
    {
        public override DateTimeOffset GetUtcNow()
        {
            happens();
            return new DateTimeOffset(2125, 1, 1, 0, 0, 0, TimeSpan.Zero);
        }
    }
}
