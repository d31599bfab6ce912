using CsCheck;
using GddWatch.Notices.Channels;
using GddWatch.Tests.Loopback;
using Microsoft.Extensions.Time.Testing;
using Xunit;

namespace GddWatch.Tests.Notices.Channels;

public sealed class MinuteLimitTests
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task The_mail_beyond_the_limit_waits_until_a_minute_after_the_first()
    {
        var time = new WatchedTime();
        var limit = new MinuteLimit(2, time);
        await limit.TakeTurnAsync(Stop);
        time.Advance(TimeSpan.FromSeconds(10));
        await limit.TakeTurnAsync(Stop);

        Task third = limit.TakeTurnAsync(Stop);
        Assert.Equal(TimeSpan.FromSeconds(50), await time.NextWaitShorterThanAsync(TimeSpan.FromMinutes(1), Stop));
        Assert.False(third.IsCompleted);
        time.Advance(TimeSpan.FromSeconds(50));
        await third;
    }

    [Fact]
    public async Task Without_a_limit_nobody_waits()
    {
        var limit = new MinuteLimit(0, new FakeTimeProvider());
        for (int mail = 0; mail < 1000; mail++) await limit.TakeTurnAsync(Stop);
    }

    [Fact]
    public async Task Whoever_waits_for_a_turn_can_be_stopped()
    {
        using var stopping = new CancellationTokenSource();
        var limit = new MinuteLimit(1, new FakeTimeProvider());
        await limit.TakeTurnAsync(stopping.Token);
        Task second = limit.TakeTurnAsync(stopping.Token);
        await stopping.CancelAsync();
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => second);
    }

    [Fact]
    public void Within_any_minute_there_are_no_more_than_the_limit_and_nobody_waits_without_need() =>
        Gen.Select(Gen.Int[1, 5], Gen.Int[0, 30].Array[40]).Sample(
            (most, gaps) =>
            {
                var time = new FakeTimeProvider();
                var limit = new MinuteLimit(most, time);
                var turns = new List<DateTimeOffset>();
                foreach (int gap in gaps)
                {
                    time.Advance(TimeSpan.FromSeconds(gap));
                    DateTimeOffset asked = time.GetUtcNow();
                    Task turn = limit.TakeTurnAsync(CancellationToken.None);
                    while (!turn.IsCompleted) time.Advance(TimeSpan.FromSeconds(1));
                    DateTimeOffset got = time.GetUtcNow();
                    DateTimeOffset earliest = turns.Count < most || turns[^most].AddMinutes(1) < asked ? asked : turns[^most].AddMinutes(1);
                    if (got != earliest) return false;
                    turns.Add(got);
                }

                return true;
            },
            iter: 200,
            threads: 1);
}
