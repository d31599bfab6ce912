using Microsoft.Extensions.Logging;

namespace GddWatch.Watching;

/// <summary>The lines that the service logs: sentences that a person can read, with stable event numbers.</summary>
internal static partial class Log
{
    [LoggerMessage(1, LogLevel.Information, "{Day:dddd d MMMM yyyy}: {Windows} windows looked at, {Messages} new in the queue of mails.")]
    public static partial void Judged(this ILogger log, DateOnly day, int windows, int messages);

    [LoggerMessage(2, LogLevel.Error, "{Failure}")]
    public static partial void SiteFailed(this ILogger log, string failure);

    [LoggerMessage(3, LogLevel.Information, "Mails delivered: {Messages}.")]
    public static partial void Delivered(this ILogger log, int messages);

    [LoggerMessage(4, LogLevel.Warning, "{Trouble}")]
    public static partial void NotDelivered(this ILogger log, string trouble);

    [LoggerMessage(9, LogLevel.Error, "{Loss}")]
    public static partial void RefusedForGood(this ILogger log, string loss);

    [LoggerMessage(8, LogLevel.Warning, "Mails still waiting to be delivered: {Messages}; the oldest since {Since:dddd d MMMM yyyy HH:mm zzz}.")]
    public static partial void Waiting(this ILogger log, int messages, DateTimeOffset since);

    [LoggerMessage(5, LogLevel.Information, "The next daily pass is on {At:dddd d MMMM yyyy HH:mm zzz}.")]
    public static partial void NextPass(this ILogger log, DateTimeOffset at);

    [LoggerMessage(12, LogLevel.Warning, "The clock of this machine went back from {Before:dddd d MMMM yyyy HH:mm zzz} to {Now:dddd d MMMM yyyy HH:mm zzz}; no day is judged twice and none is left out.")]
    public static partial void ClockWentBack(this ILogger log, DateTimeOffset before, DateTimeOffset now);

    [LoggerMessage(10, LogLevel.Warning, "Mails that waited for a time far ahead, set by a clock that was wrong then, are due now: {Messages}.")]
    public static partial void WaitsEnded(this ILogger log, int messages);

    [LoggerMessage(11, LogLevel.Information, "Stopped before the pass was done; what was begun is kept and goes on at the next start.")]
    public static partial void StoppedEarly(this ILogger log);

    [LoggerMessage(6, LogLevel.Information, "Stopped; what was begun is kept and goes on at the next start.")]
    public static partial void Stopped(this ILogger log);

    [LoggerMessage(20, LogLevel.Information, "Another service judges on this database. This one delivers, and judges as soon as that one ends.")]
    public static partial void JudgedElsewhere(this ILogger log);

    [LoggerMessage(21, LogLevel.Warning, "{Why} It is tried again in a minute.")]
    public static partial void WaitsForDatabase(this ILogger log, string why);

    [LoggerMessage(7, LogLevel.Critical, "The service cannot go on: {Why}")]
    public static partial void Failed(this ILogger log, string why);
}
