namespace GddWatch.SetClock;

/// <summary>A clock that was put to an instant when the process started, and goes on from there.</summary>
internal sealed class StartedClock(DateTimeOffset start) : TimeProvider
{
    private readonly long begun = System.GetTimestamp();

    public override DateTimeOffset GetUtcNow() => start + System.GetElapsedTime(begun);
}
