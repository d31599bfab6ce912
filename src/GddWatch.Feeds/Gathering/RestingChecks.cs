using GddWatch.Agronomy.Weather;
using GddWatch.Agronomy.Weather.Checks;

namespace GddWatch.Feeds.Gathering;

/// <summary>
/// How far the checks of a region's sites have come, from one day to the next: each site's walk rests some days before the last one and goes on from there, as long as no day before that has changed, at the
/// site or near it. So a day's checks cost the same however long the history is; what is doubted is what checking everything anew would doubt. For one gathering at a time.
/// </summary>
public sealed class RestingChecks
{
    /// <summary>How many days before the last one a walk rests at least [days]: feeds come late, and change their last days; DESIGN.</summary>
    private const int RestDays = 20;

    /// <summary>How many days more it lies back at most, so that it is not put to rest anew every day [days].</summary>
    private const int SlackDays = 20;

    private Dictionary<string, Resting> sites = new(StringComparer.Ordinal);
    private Dictionary<string, DailySeries> seen = new(StringComparer.Ordinal);

    /// <summary>Every doubt about each site's days.</summary>
    /// <param name="gathered">The sites.</param>
    /// <param name="near">The sites near each, in the order of the sites.</param>
    /// <param name="stepDone">Called after each site, from any thread; null for nobody.</param>
    internal IReadOnlyList<Doubt>[] DoubtsOf(GatheredSite[] gathered, IReadOnlyList<NearSite>[] near, Action? stepDone)
    {
        var unchangedBefore = new DateOnly[gathered.Length];
        Parallel.For(0, gathered.Length, i => unchangedBefore[i] = gathered[i].Series is { } now && seen.TryGetValue(gathered[i].Site.Id, out DailySeries? then) ? then.FirstDifference(now, [WeatherVariable.MinimumAirC, WeatherVariable.MaximumAirC]) : DateOnly.MinValue);
        var doubts = new IReadOnlyList<Doubt>[gathered.Length];
        var resting = new Resting?[gathered.Length];
        Parallel.For(0, gathered.Length, i =>
        {
            (doubts[i], resting[i]) = gathered[i].Series is { } series ? Check(gathered[i].Site.Id, series, near[i], unchangedBefore[i], unchangedBefore) : ([], null);
            stepDone?.Invoke();
        });
        sites = new Dictionary<string, Resting>(StringComparer.Ordinal);
        seen = new Dictionary<string, DailySeries>(StringComparer.Ordinal);
        for (int i = 0; i < gathered.Length; i++)
        {
            if (gathered[i].Series is { } series) seen[gathered[i].Site.Id] = series;
            if (resting[i] is { } rest) sites[gathered[i].Site.Id] = rest;
        }

        return doubts;
    }

    private (IReadOnlyList<Doubt> Doubts, Resting? Resting) Check(string site, DailySeries series, IReadOnlyList<NearSite> near, DateOnly unchangedBefore, DateOnly[] othersUnchangedBefore)
    {
        NeighbourSeries[] neighbours = NearSite.Series(near);
        (string Site, double Kilometres)[] places = [.. near.Select(other => (other.Gathered.Site.Id, other.Kilometres))];
        Resting? before = sites.GetValueOrDefault(site);
        if (before is not null && !(unchangedBefore > before.Walk.Through && near.All(other => othersUnchangedBefore[other.Place] > before.Walk.Through) && before.Near.AsSpan().SequenceEqual(places))) before = null;
        QualityWalk walk = before?.Walk.Over(series, neighbours) ?? new QualityWalk(series, neighbours);
        DateOnly rests = series.LastDay.AddDays(-RestDays);
        if (before is null || before.Walk.Through < rests.AddDays(-SlackDays))
        {
            walk.GoOn(rests);
            before = walk.Through < series.FirstDay ? null : new Resting(walk.AtRest(), places);
        }

        walk.GoOn(series.LastDay);
        return (walk.Doubts, before);
    }

    /// <summary>A site's walk at rest.</summary>
    /// <param name="Walk">The walk.</param>
    /// <param name="Near">The sites that it was compared with.</param>
    private sealed record Resting(QualityWalk Walk, (string Site, double Kilometres)[] Near);
}
