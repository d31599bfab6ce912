namespace GddWatch.Watching;

/// <summary>
/// Which daily passes were made, so that each is made once and no day is lost, whichever way the clock goes: it may be put back or forward by minutes or by
/// years while the service runs.
/// </summary>
internal sealed class PassSchedule(WorkerPlan plan)
{
    // One entry a day of running: they cost nothing, and only all of them tell what was made before a clock went wrong and right again.
    private readonly HashSet<DateOnly> made = [];
    private readonly HashSet<DateOnly> judged = [];
    private DateOnly latest = DateOnly.MinValue;

    /// <summary>Whether a pass is to be made.</summary>
    public bool IsDue(DateTimeOffset now)
    {
        DateOnly scheduled = plan.LastPassDayAt(now);
        DateOnly day = plan.DayAt(now);
        bool isMade = made.Contains(scheduled);
        bool isJudged = judged.Contains(day);
        // Behind the latest pass the clock has gone back: then a day that was judged is not judged again, and one that was not still is.
        return scheduled == day
            ? !isJudged || (scheduled > latest && !isMade)
            : !isMade && (scheduled > latest || !isJudged);
    }

    /// <summary>Notes that a pass was made.</summary>
    /// <param name="now">When it began.</param>
    public void Made(DateTimeOffset now)
    {
        DateOnly scheduled = plan.LastPassDayAt(now);
        made.Add(scheduled);
        judged.Add(plan.DayAt(now));
        latest = scheduled;
    }
}
