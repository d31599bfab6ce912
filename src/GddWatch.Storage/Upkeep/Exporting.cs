using GddWatch.Storage.Sql;

namespace GddWatch.Storage.Upkeep;

/// <summary>Gives everything that is kept, as it was at one moment, to somebody who writes it down.</summary>
public sealed class Exporting(Database database)
{
    /// <summary>Gives the journal, then each table, row by row.</summary>
    /// <param name="journal">Takes the whole journal, mended and withdrawn entries too.</param>
    /// <param name="table">Takes a table and its rows.</param>
    /// <param name="stop">To be stopped by.</param>
    public Task RunAsync(
        Func<IReadOnlyList<KeptEntry>, Task> journal, Func<ExportedTable, IAsyncEnumerable<IReadOnlyList<string?>>, Task> table, CancellationToken stop) => database.ReadAtOnceAsync(
        async work =>
        {
            await journal([.. (await work.QueryAsync<JournalRow>(JournalSql.LoadAll)).Select(row => row.Kept())]);
            foreach (ExportedTable each in ExportedTables.All) await table(each, work.StreamCellsAsync(each.Select));
            return true;
        },
        stop);
}
