using System.Globalization;
using GddWatch.Storage;

namespace GddWatch.Tests.Storage;

/// <summary>All that a database tells through its public face, as text: equal texts are equal states.</summary>
internal static class KeptState
{
    public static async Task<string> OfAsync(Database database, CancellationToken stop)
    {
        ToldStore told = new(database);
        Outbox outbox = new(database);
        WindowStore windows = new(database);
        IEnumerable<object?> all =
        [
            .. await windows.LoadAsync(stop),
            .. (await windows.LoadLastJudgedAsync(stop)).Select(pair => (object)pair),
            .. (await told.LoadAsync(stop)).All,
            await outbox.CountAsync(stop),
            .. await outbox.LoadUndeliveredAsync(stop),
            await new RegionValues(database).FindAsync("configuration", stop),
            .. await new JournalStore(database).LoadHistoryAsync(stop),
        ];
        return string.Join('\n', all.Select(one => Convert.ToString(one, CultureInfo.InvariantCulture)));
    }
}
