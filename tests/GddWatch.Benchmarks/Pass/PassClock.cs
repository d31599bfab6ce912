namespace GddWatch.Benchmarks.Pass;

/// <summary>The morning of a day.</summary>
internal sealed class PassClock(DateOnly day) : TimeProvider
{
    public DateOnly Day { get; set; } = day;

    public override DateTimeOffset GetUtcNow() => new(Day, new TimeOnly(13, 0), TimeSpan.Zero);
}
