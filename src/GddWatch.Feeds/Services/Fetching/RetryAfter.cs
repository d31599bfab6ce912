namespace GddWatch.Feeds.Services.Fetching;

/// <summary>How long a service asks to be left alone.</summary>
internal static class RetryAfter
{
    /// <summary>The wait that the header Retry-After asks for, in seconds or until a date; null where there is none.</summary>
    public static TimeSpan? Of(HttpResponseMessage? response, TimeProvider clock)
    {
        if (response?.Headers.RetryAfter is not { } header) return null;
        TimeSpan? wait = header.Delta ?? header.Date - clock.GetUtcNow();
        return wait > TimeSpan.Zero ? wait : null;
    }
}
