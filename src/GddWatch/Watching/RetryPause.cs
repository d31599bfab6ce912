namespace GddWatch.Watching;

/// <summary>How long a message that was refused for now waits before the next attempt: a pure answer, tested without waiting.</summary>
internal static class RetryPause
{
    private static readonly TimeSpan First = TimeSpan.FromMinutes(5);
    private static readonly TimeSpan Longest = TimeSpan.FromHours(6);

    /// <summary>The pause after so many attempts: five minutes, doubled each time, at most six hours, and up to a quarter longer by chance.</summary>
    /// <param name="attempts">Attempts so far, from 1.</param>
    /// <param name="chance">A draw from 0 to 1, so that many messages do not return at the same moment.</param>
    public static TimeSpan After(int attempts, double chance)
    {
        double doubled = First.TotalSeconds * Math.Pow(2, Math.Clamp(attempts - 1, 0, 20));
        double seconds = Math.Min(doubled, Longest.TotalSeconds);
        return TimeSpan.FromSeconds(seconds * (1 + 0.25 * Math.Clamp(chance, 0, 1)));
    }
}
