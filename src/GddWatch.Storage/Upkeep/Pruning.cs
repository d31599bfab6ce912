using GddWatch.Storage.Sql;

namespace GddWatch.Storage.Upkeep;

/// <summary>
/// Takes out what is old: settled messages with their notices, values that their source has changed since, forecasts. Never the journal, the windows, a value
/// that stands, a message that waits, or the last forecast of a day's temperatures, which may fill a hole.
/// </summary>
public sealed class Pruning(Database database)
{
    /// <summary>What is younger is needed: a notice must be known as told for as long as its season and the one after it last.</summary>
    public const int YoungestYears = 2;

    /// <summary>Takes out what was settled, replaced or issued before a day, all or nothing.</summary>
    /// <param name="before">The day.</param>
    /// <param name="today">Today, before which the day must lie by <see cref="YoungestYears"/>.</param>
    /// <param name="stop">To be stopped by; nothing is taken out then.</param>
    /// <exception cref="ArgumentOutOfRangeException">The day is younger than that.</exception>
    public Task<Pruned> RunAsync(DateOnly before, DateOnly today, CancellationToken stop) => database.WriteAsync(Work(before, today), stop);

    /// <summary>What that would take out. It is done and undone again, so that it is not another answer.</summary>
    public Task<Pruned> TryAsync(DateOnly before, DateOnly today, CancellationToken stop) => database.WriteAndUndoAsync(Work(before, today), stop);

    private static Func<Work, Task<Pruned>> Work(DateOnly before, DateOnly today)
    {
        ArgumentOutOfRangeException.ThrowIfGreaterThan(before, today.AddYears(-YoungestYears));
        // A day sorts before every instant in it.
        var values = new { before = StoredText.Of(before) };
        return async work =>
        {
            int notices = await work.ExecuteAsync(PruneSql.Told, values);
            int messages = await work.ExecuteAsync(PruneSql.Messages, values);
            int forecasts = await work.ExecuteAsync(PruneSql.Forecasts, values);
            int replaced = await work.ExecuteAsync(PruneSql.ReplacedValues, values);
            if (forecasts + replaced > 0) await WeatherStore.MarkChangedAsync(work);
            return new Pruned(messages, notices, forecasts, replaced);
        };
    }
}
