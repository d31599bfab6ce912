using System.Threading.RateLimiting;

namespace GddWatch.Feeds.Services.Fetching;

/// <summary>
/// A rate limiter that lets a few requests go at once and then one in each interval; the others wait their turn. The limiters of the runtime read the machine's own
/// clock, this one the clock that it is given.
/// </summary>
public sealed class SteadyPace(TimeProvider clock, TimeSpan interval, int atOnce) : RateLimiter
{
    private readonly Lock gate = new();
    private DateTimeOffset nextFree = DateTimeOffset.MinValue;

    /// <inheritdoc/>
    public override TimeSpan? IdleDuration => null;

    /// <inheritdoc/>
    public override RateLimiterStatistics? GetStatistics() => null;

    /// <inheritdoc/>
    protected override RateLimitLease AttemptAcquireCore(int permitCount) => Reserve(permitCount, mayWait: false) is null ? Refused.Lease : Granted.Lease;

    /// <inheritdoc/>
    protected override async ValueTask<RateLimitLease> AcquireAsyncCore(int permitCount, CancellationToken cancellationToken)
    {
        if (Reserve(permitCount, mayWait: true) is { } wait && wait > TimeSpan.Zero) await Task.Delay(wait, clock, cancellationToken);
        return Granted.Lease;
    }

    // Null where the turn is not now and nobody wants to wait.
    private TimeSpan? Reserve(int permits, bool mayWait)
    {
        lock (gate)
        {
            DateTimeOffset now = clock.GetUtcNow();
            DateTimeOffset earliest = now - (interval * (atOnce - 1));
            DateTimeOffset turn = nextFree < earliest ? earliest : nextFree;
            TimeSpan wait = turn > now ? turn - now : TimeSpan.Zero;
            if (wait > TimeSpan.Zero && !mayWait) return null;
            nextFree = turn + (interval * permits);
            return wait;
        }
    }

    private sealed class Granted : RateLimitLease
    {
        public static readonly Granted Lease = new();

        public override bool IsAcquired => true;

        public override IEnumerable<string> MetadataNames => [];

        public override bool TryGetMetadata(string metadataName, out object? metadata)
        {
            metadata = null;
            return false;
        }
    }

    private sealed class Refused : RateLimitLease
    {
        public static readonly Refused Lease = new();

        public override bool IsAcquired => false;

        public override IEnumerable<string> MetadataNames => [];

        public override bool TryGetMetadata(string metadataName, out object? metadata)
        {
            metadata = null;
            return false;
        }
    }
}
