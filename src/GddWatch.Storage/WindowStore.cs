using GddWatch.Storage.Sql;

namespace GddWatch.Storage;

/// <summary>The windows as they were judged last.</summary>
public sealed class WindowStore(Database database)
{
    /// <summary>All windows, by site, treatment and season.</summary>
    public Task<IReadOnlyList<KeptWindow>> LoadAsync(CancellationToken stop) => database.ReadAsync(
        async work => Read(await work.QueryAsync<Row>(KeptWindowSql.LoadAll)), stop);

    /// <summary>The windows of one site, by treatment and season.</summary>
    public Task<IReadOnlyList<KeptWindow>> LoadAsync(string site, CancellationToken stop) => database.ReadAsync(
        async work => Read(await work.QueryAsync<Row>(KeptWindowSql.LoadOfSite, new { site })), stop);

    /// <summary>The day as of which each site was judged last; a site that never was is absent.</summary>
    public Task<IReadOnlyDictionary<string, DateOnly>> LoadLastJudgedAsync(CancellationToken stop) => database.ReadAsync(
        async work =>
        {
            IEnumerable<JudgedRow> rows = await work.QueryAsync<JudgedRow>(JudgedSiteSql.Load);
            return (IReadOnlyDictionary<string, DateOnly>)rows.ToDictionary(row => row.Site, row => StoredText.Day(row.JudgedOn), StringComparer.Ordinal);
        },
        stop);

    internal static Task<int> KeepAsync(Work work, IEnumerable<KeptWindow> windows) => work.ExecuteEachAsync(KeptWindowSql.Keep, windows.Select(Row.Of));

    internal static Task<int> KeepJudgedAsync(Work work, IEnumerable<string> sites, DateOnly day)
    {
        string judgedOn = StoredText.Of(day);
        return work.ExecuteEachAsync(JudgedSiteSql.Keep, sites.Select(site => new { site, judgedOn }));
    }

    private static IReadOnlyList<KeptWindow> Read(IEnumerable<Row> rows) => [.. rows.Select(row => row.Window())];

    private sealed class JudgedRow
    {
        public string Site { get; init; } = "";

        public string JudgedOn { get; init; } = "";
    }

    private sealed class Row
    {
        public string Site { get; init; } = "";

        public string Treatment { get; init; } = "";

        public int Season { get; init; }

        public string State { get; init; } = "";

        public string Since { get; init; } = "";

        public string Reason { get; init; } = "";

        public string? Opened { get; init; }

        public string? PastBest { get; init; }

        public string? ClosedOn { get; init; }

        public string JudgedOn { get; init; } = "";

        public string? WeatherThrough { get; init; }

        public string Configuration { get; init; } = "";

        public string? ConfigurationNote { get; init; }

        public static Row Of(KeptWindow window) => new()
        {
            Site = window.Site,
            Treatment = window.Treatment,
            Season = window.Season,
            State = Agronomy.Windows.WindowStates.Word(window.State),
            Since = StoredText.Of(window.Since),
            Reason = window.Reason,
            Opened = StoredText.Of(window.Opened),
            PastBest = StoredText.Of(window.PastBest),
            ClosedOn = StoredText.Of(window.ClosedOn),
            JudgedOn = StoredText.Of(window.JudgedOn),
            WeatherThrough = StoredText.Of(window.WeatherThrough),
            Configuration = window.Configuration,
            ConfigurationNote = window.ConfigurationNote,
        };

        public KeptWindow Window() => new()
        {
            Site = Site,
            Treatment = Treatment,
            Season = Season,
            State = StoredText.State(State),
            Since = StoredText.Day(Since),
            Reason = Reason,
            Opened = StoredText.DayOrNone(Opened),
            PastBest = StoredText.DayOrNone(PastBest),
            ClosedOn = StoredText.DayOrNone(ClosedOn),
            JudgedOn = StoredText.Day(JudgedOn),
            WeatherThrough = StoredText.DayOrNone(WeatherThrough),
            Configuration = Configuration,
            ConfigurationNote = ConfigurationNote,
        };
    }
}
