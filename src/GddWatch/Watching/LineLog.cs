using System.Globalization;
using Microsoft.Extensions.Logging;

namespace GddWatch.Watching;

/// <summary>
/// The log as lines that a person can read: the region's own time with its distance from UTC, how serious it is where it is serious, and a sentence. Under systemd,
/// which keeps the time itself, each line begins with the number of its seriousness instead (sd-daemon(3)), so that `journalctl -p warning` finds it.
/// </summary>
internal sealed class LineLog(TextWriter lines, TimeProvider clock, TimeZoneInfo zone, bool underSystemd) : ILoggerProvider, ILogger
{
    private readonly Lock turn = new();

    public ILogger CreateLogger(string categoryName) => this;

    public bool IsEnabled(LogLevel logLevel) => logLevel != LogLevel.None;

    public IDisposable? BeginScope<TState>(TState state)
        where TState : notnull => null;

    public void Log<TState>(LogLevel logLevel, EventId eventId, TState state, Exception? exception, Func<TState, Exception?, string> formatter)
    {
        string sentence = formatter(state, exception);
        if (exception is not null) sentence = $"{sentence} {exception.Message}";
        // Whatever a server or a file has put into it, an entry stays one line.
        sentence = string.Concat(sentence.ReplaceLineEndings(" ").Select(each => char.IsControl(each) ? ' ' : each)).Trim();
        string begin = underSystemd
            ? $"<{Number(logLevel)}>"
            : $"{TimeZoneInfo.ConvertTime(clock.GetUtcNow(), zone).ToString("yyyy-MM-dd HH:mm:ss zzz", CultureInfo.InvariantCulture)}  {Word(logLevel)}";
        lock (turn) lines.WriteLine($"{begin}{sentence}");
    }

    public void Dispose()
    {
        // What it writes to belongs to whoever made it.
    }

    private static string Word(LogLevel level) => level switch
    {
        LogLevel.Warning => "warning: ",
        LogLevel.Error or LogLevel.Critical => "error: ",
        _ => "",
    };

    private static int Number(LogLevel level) => level switch
    {
        LogLevel.Critical => 2,
        LogLevel.Error => 3,
        LogLevel.Warning => 4,
        LogLevel.Information => 6,
        _ => 7,
    };
}
