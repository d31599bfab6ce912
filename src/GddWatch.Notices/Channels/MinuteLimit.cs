namespace GddWatch.Notices.Channels;

/// <summary>Holds a mail back until sending it makes no more than so many within any minute.</summary>
/// <param name="most">How many at most; 0 for no limit.</param>
/// <param name="time">The clock.</param>
public sealed class MinuteLimit(int most, TimeProvider time)
{
    private static readonly TimeSpan Minute = TimeSpan.FromMinutes(1);

    private readonly Queue<long> lastMinute = new();

    /// <summary>Waits for a turn and takes it. Not for several callers at once.</summary>
    public async Task TakeTurnAsync(CancellationToken stop)
    {
        if (most == 0) return;
        Forget();
        while (lastMinute.Count >= most)
        {
            TimeSpan wait = Minute - time.GetElapsedTime(lastMinute.Peek());
            if (wait > TimeSpan.Zero) await Task.Delay(wait, time, stop);
            Forget();
        }

        lastMinute.Enqueue(time.GetTimestamp());
    }

    private void Forget()
    {
        while (lastMinute.TryPeek(out long oldest) && time.GetElapsedTime(oldest) >= Minute) lastMinute.Dequeue();
    }
}
