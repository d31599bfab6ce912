using GddWatch.Commands;
using GddWatch.Tests.Commands;
using GddWatch.Tests.Loopback;
using Xunit;

namespace GddWatch.Tests.Watching;

/// <summary>The service at work inside the test, on a clock that the test moves minute by minute or puts wherever it wants.</summary>
internal sealed class LiveWatch : IAsyncDisposable
{
    private static readonly TimeSpan Tick = TimeSpan.FromMinutes(1);

    private readonly CancellationTokenSource stop = CancellationTokenSource.CreateLinkedTokenSource(TestContext.Current.CancellationToken);
    private readonly StringWriter errors = new() { NewLine = "\n" };
    private readonly WatchedTime clock;
    private readonly Task<int> running;

    private LiveWatch(Workshop workshop, WatchedTime clock)
    {
        this.clock = clock;
        workshop.GoBy(clock);
        TextWriter error = TextWriter.Synchronized(errors);
        running = Task.Run(() => CommandLine.RunAsync(["watch", "--config", workshop.Config, "--data", workshop.Data], new Terminal(TextWriter.Null, error, clock, isInteractive: false), stop.Token));
    }

    /// <summary>What it said.</summary>
    public string Said => errors.ToString();

    public int Passes => Said.Split("windows looked at").Length - 1;

    public Task<int> Ended => running;

    /// <summary>Starts it; returns when the first pass is made and it waits.</summary>
    public static async Task<LiveWatch> StartAsync(Workshop workshop, DateTimeOffset at)
    {
        var time = new WatchedTime();
        time.AdjustTime(at);
        var watch = new LiveWatch(workshop, time);
        await watch.WaitsAsync();
        return watch;
    }

    /// <summary>Puts the clock, as a hand or a time server does, and lets the service look at it.</summary>
    public async Task PutClockAsync(DateTimeOffset to)
    {
        clock.AdjustTime(to - Tick);
        await PassMinuteAsync();
    }

    /// <summary>Lets a minute pass.</summary>
    public async Task PassMinuteAsync()
    {
        clock.Advance(Tick);
        await WaitsAsync();
    }

    /// <summary>Lets a minute pass at which it ends.</summary>
    public async Task<int> EndsWithinMinuteAsync()
    {
        clock.Advance(Tick);
        return await running;
    }

    public async Task<int> StopAsync()
    {
        await stop.CancelAsync();
        return await running;
    }

    public async ValueTask DisposeAsync()
    {
        await stop.CancelAsync();
        await running;
        stop.Dispose();
    }

    private async Task WaitsAsync()
    {
        while (await clock.NextWaitShorterThanAsync(Tick + TimeSpan.FromSeconds(1), stop.Token) != Tick)
        {
            // Something else waits; the service itself waits for a minute each time.
        }
    }
}
