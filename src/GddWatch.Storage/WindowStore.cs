using GddWatch.Storage.Sql;

namespace GddWatch.Storage;

/// <summary>The windows as they were judged last.</summary>
public sealed class WindowStore(Database database)
{
    /// <summary>All windows, by site, treatment and season.</summary>
    public Task<IReadOnlyList<KeptWindow>> LoadAsync(CancellationToken stop) => database.ReadAsync(
        async work => Read(await work.QueryAsync<KeptWindowRow>(KeptWindowSql.LoadAll)), stop);

    /// <summary>The windows of one site, by treatment and season.</summary>
    public Task<IReadOnlyList<KeptWindow>> LoadAsync(string site, CancellationToken stop) => database.ReadAsync(
        async work => Read(await work.QueryAsync<KeptWindowRow>(KeptWindowSql.LoadOfSite, new { site })), stop);

    /// <summary>The day as of which each site was judged last; a site that never was is absent.</summary>
    public Task<IReadOnlyDictionary<string, DateOnly>> LoadLastJudgedAsync(CancellationToken stop) => database.ReadAsync(
        async work =>
        {
            IEnumerable<JudgedRow> rows = await work.QueryAsync<JudgedRow>(JudgedSiteSql.Load);
            return (IReadOnlyDictionary<string, DateOnly>)rows.ToDictionary(row => row.Site, row => StoredText.Day(row.JudgedOn), StringComparer.Ordinal);
        },
        stop);

    internal static Task<int> KeepAsync(Work work, IEnumerable<KeptWindow> windows) => work.ExecuteEachAsync(KeptWindowSql.Keep, windows.Select(KeptWindowRow.Of));

    internal static Task<int> KeepJudgedAsync(Work work, IEnumerable<string> sites, DateOnly day)
    {
        string judgedOn = StoredText.Of(day);
        return work.ExecuteEachAsync(JudgedSiteSql.Keep, sites.Select(site => new { site, judgedOn }));
    }

    private static IReadOnlyList<KeptWindow> Read(IEnumerable<KeptWindowRow> rows) => [.. rows.Select(row => row.Window())];

    private sealed class JudgedRow
    {
        public string Site { get; init; } = "";

        public string JudgedOn { get; init; } = "";
    }
}
