using System.Threading.Channels;
using Microsoft.Extensions.Time.Testing;

namespace GddWatch.Tests.Loopback;

/// <summary>A clock that stands still until the test moves it, and tells when somebody begins to wait for it.</summary>
internal sealed class WatchedTime : FakeTimeProvider
{
    private readonly Channel<TimeSpan> waits = Channel.CreateUnbounded<TimeSpan>();

    public override ITimer CreateTimer(TimerCallback callback, object? state, TimeSpan dueTime, TimeSpan period)
    {
        ITimer timer = base.CreateTimer(callback, state, dueTime, period);
        waits.Writer.TryWrite(dueTime);
        return timer;
    }

    /// <summary>The next wait that somebody begins and that is shorter than the given time.</summary>
    public async Task<TimeSpan> NextWaitShorterThanAsync(TimeSpan longest, CancellationToken stop)
    {
        while (true)
        {
            TimeSpan wait = await waits.Reader.ReadAsync(stop);
            if (wait > TimeSpan.Zero && wait < longest) return wait;
        }
    }
}
