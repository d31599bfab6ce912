namespace GddWatch.Validation.Hindcasts;

/// <summary>What would have been said at one station, scored.</summary>
/// <param name="Without">Without any forecast.</param>
/// <param name="With">With the made-up forecast.</param>
/// <param name="Unlinked">With one whose errors are not linked from day to day; empty where not asked for.</param>
internal sealed record HindcastOfStation(IReadOnlyList<ScoredIssue> Without, IReadOnlyList<ScoredIssue> With, IReadOnlyList<ScoredIssue> Unlinked)
{
    /// <summary>The kinds of forecast and what was said with each.</summary>
    public IEnumerable<(string Forecast, IReadOnlyList<ScoredIssue> Issues)> Kinds => [("none", Without), ("made up", With), ("made up, errors not linked", Unlinked)];

    /// <summary>Several stations together.</summary>
    public static HindcastOfStation Together(IReadOnlyCollection<HindcastOfStation> stations) =>
        new([.. stations.SelectMany(each => each.Without)], [.. stations.SelectMany(each => each.With)], [.. stations.SelectMany(each => each.Unlinked)]);
}
