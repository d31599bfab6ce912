using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Weather;
using GddWatch.Agronomy.Weather.Checks;
using GddWatch.Agronomy.Weather.Filling;
using GddWatch.Feeds.Archives;

namespace GddWatch.Feeds.Gathering;

/// <summary>Puts the sites of a region beside each other: each is checked and filled with the help of those near by.</summary>
public static class RegionWeather
{
    /// <summary>Beyond this distance another site says little of a day here [km]: pairs of stations farther apart filled no better than 2.7 °C.</summary>
    public const double NeighbourKm = 300;

    /// <summary>
    /// How many of the nearest sites help a site at most: with the number of sites the work for each stays the same. Of more than these hardly one would say anything better (DESIGN).
    /// </summary>
    public const int MostNeighbours = 20;

    /// <summary>How many of the nearest sites are asked whether a site's maxima stand a day late: comparing two years of days with every neighbour would cost more than it tells.</summary>
    private const int MostAskedAboutLateness = 2;

    /// <summary>The weather of each site, checked and filled.</summary>
    /// <param name="gathered">What the feeds gave, a site each.</param>
    /// <param name="forecasts">The forecasts of a site as they were issued; of those of one day the last one counts.</param>
    /// <param name="stepDone">Called after each of the two steps of a site, from any thread; null for nobody.</param>
    /// <param name="resting">How far the checks had come the last time, from where they go on; null where they are made once.</param>
    public static IReadOnlyList<SiteWeather> Of(
        IReadOnlyList<GatheredSite> gathered, Func<Site, IReadOnlyList<Forecast>> forecasts, Action? stepDone = null, RestingChecks? resting = null)
    {
        ArgumentNullException.ThrowIfNull(gathered);
        ArgumentNullException.ThrowIfNull(forecasts);
        GatheredSite[] all = [.. gathered];
        SitesNearby nearby = new(all);
        // Each site's part rests on what the feeds gave, or on what all of them were before: nothing is shared but what no one writes.
        var near = new IReadOnlyList<NearSite>[all.Length];
        Parallel.For(0, all.Length, i => near[i] = nearby.Of(i));
        IReadOnlyList<Doubt>[] doubts = new IReadOnlyList<Doubt>[all.Length];
        if (resting is null)
        {
            Parallel.For(0, all.Length, i =>
            {
                doubts[i] = all[i].Series is { } series ? QualityControl.DoubtsOf(series, NearSite.Series(near[i])) : [];
                stepDone?.Invoke();
            });
        }
        else
        {
            doubts = resting.DoubtsOf(all, near, stepDone);
        }

        CheckedSite?[] known = [.. all.Select((site, i) => site.Series is { } series ? new CheckedSite(site, doubts[i], WeatherHistory.BelievedOnItsDay(series, doubts[i])) : null)];
        SiteWeather[] weather = new SiteWeather[all.Length];
        Parallel.For(0, all.Length, i =>
        {
            WeatherHistory? history = known[i] is { } site ? HistoryOf(site, near[i], known, forecasts(all[i].Site)) : null;
            weather[i] = new SiteWeather(all[i].Site, history, all[i].Faults, [.. all[i].Remarks, .. LateRemarks(all[i], near[i])]);
            stepDone?.Invoke();
        });
        return weather;
    }

    /// <summary>Says where a site's maxima go with those that its other feeds, or else the nearest site that can be compared, had a day before.</summary>
    private static IEnumerable<FeedRemark> LateRemarks(GatheredSite site, IReadOnlyList<NearSite> near)
    {
        if (site.Series is null) return [];
        (string Feed, DailySeries Series) first = site.Readings[0];
        IEnumerable<(string Name, DailySeries Series)> asked = site.Readings.Skip(1).Concat(
            near.OrderBy(other => other.Kilometres).Take(MostAskedAboutLateness).Select(other => (other.Gathered.Site.Name, other.Gathered.Readings[0].Series)));
        return asked.Select(other => (other.Name, Late: LateMaxima.Of(first.Series, other.Series))).Where(other => other.Late is not null).Take(1).Select(other => new FeedRemark(
            $"late maxima {first.Feed}",
            FormattableString.Invariant($"the maxima of {first.Feed} seem to stand a day late: over {other.Late!.Days} days their changes go with those of {other.Name} on the day before ({other.Late.DayBefore:0.00}), not on the same day ({other.Late.SameDay:0.00}); 1.00 would be in step. If it is read in the morning, write \"observed-at: morning\" at the feed; until then each maximum is taken for the day that it stands under.")));
    }

    private static WeatherHistory HistoryOf(CheckedSite site, IReadOnlyList<NearSite> near, CheckedSite?[] known, IReadOnlyList<Forecast> forecasts)
    {
        FillingNeighbour[] others =
        [
            .. site.Gathered.Readings.Skip(1).Select(feed => new FillingNeighbour(feed.Feed, WithoutDoubted(feed.Series, site.Doubts), IsSameSite: true)),
            .. near.OrderBy(other => other.Kilometres).Select(other => new FillingNeighbour(other.Gathered.Site.Name, known[other.Place]!.Believed)),
        ];
        return WeatherHistory.Of(site.Gathered.Series!, site.Doubts, others, forecasts);
    }

    /// <summary>What a further feed of the site can say against what is doubted: its value, unless it is the very one that was taken and is doubted.</summary>
    private static DailySeries WithoutDoubted(DailySeries feed, IReadOnlyList<Doubt> doubts)
    {
        Doubt[] its = [.. doubts.Where(doubt => feed.Holds(doubt.Day) && feed.Column(doubt.Variable)[feed.IndexOf(doubt.Day)] == doubt.Value)];
        return WeatherHistory.BelievedOnItsDay(feed, [.. its.Select(doubt => doubt with { KnownFrom = doubt.Day })]);
    }

    private sealed record CheckedSite(GatheredSite Gathered, IReadOnlyList<Doubt> Doubts, DailySeries Believed);
}
