using System.Threading.RateLimiting;
using GddWatch.Feeds.Services.Fetching;
using GddWatch.Tests.Loopback;
using Xunit;

namespace GddWatch.Tests.Feeds.Services;

public sealed class SteadyPaceTests
{
    [Fact]
    public async Task A_few_go_at_once_and_then_one_in_each_interval()
    {
        WatchedTime clock = new();
        using SteadyPace pace = new(clock, TimeSpan.FromSeconds(2), atOnce: 3);
        CancellationToken stop = TestContext.Current.CancellationToken;
        Task<RateLimitLease>[] turns = [.. Enumerable.Range(0, 5).Select(_ => pace.AcquireAsync(1, stop).AsTask())];

        Assert.Equal([true, true, true, false, false], turns.Select(each => each.IsCompletedSuccessfully));
        clock.Advance(TimeSpan.FromSeconds(2));
        await turns[3];
        Assert.False(turns[4].IsCompleted);
        clock.Advance(TimeSpan.FromSeconds(2));
        Assert.True((await turns[4]).IsAcquired);
        Assert.False(pace.AttemptAcquire().IsAcquired);
        clock.Advance(TimeSpan.FromMinutes(1));
        Assert.Equal([true, true, true, false], Enumerable.Range(0, 4).Select(_ => pace.AttemptAcquire().IsAcquired));
    }
}
