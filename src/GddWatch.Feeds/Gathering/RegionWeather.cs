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

    /// <summary>How many of their latest common days two sites are compared on to see whether they read the same source [days].</summary>
    private const int ComparedDays = 60;

    /// <summary>How many of the nearest sites are asked whether a site's maxima stand a day late: comparing two years of days with every neighbour would cost more than it tells.</summary>
    private const int MostAskedAboutLateness = 2;

    /// <summary>The weather of each site, checked and filled.</summary>
    /// <param name="gathered">What the feeds gave, a site each.</param>
    /// <param name="forecasts">The forecasts of a site as they were issued; of those of one day the last one counts.</param>
    public static IReadOnlyList<SiteWeather> Of(IReadOnlyList<GatheredSite> gathered, Func<Site, IReadOnlyList<Forecast>> forecasts)
    {
        ArgumentNullException.ThrowIfNull(gathered);
        ArgumentNullException.ThrowIfNull(forecasts);
        CheckedSite[] known = [.. gathered.Where(each => each.Series is not null).Select(each => Check(each, gathered))];
        return [.. gathered.Select(each => new SiteWeather(each.Site, known.FirstOrDefault(one => one.Gathered == each) is { } site ? HistoryOf(site, known, forecasts(each.Site)) : null, each.Faults, [.. each.Remarks, .. LateRemarks(each, gathered)]))];
    }

    private static CheckedSite Check(GatheredSite site, IReadOnlyList<GatheredSite> all)
    {
        NeighbourSeries[] near =
        [
            .. all.Where(other => other != site && other.Series is not null && !IsSameWeather(site.Series!, other.Series))
                .Select(other => new NeighbourSeries(other.Site.Name, Distance(site.Site, other.Site), other.Series!))
                .Where(other => other.DistanceKm <= NeighbourKm),
        ];
        IReadOnlyList<Doubt> doubts = QualityControl.DoubtsOf(site.Series!, near);
        return new CheckedSite(site, doubts, WeatherHistory.BelievedOnItsDay(site.Series!, doubts));
    }

    /// <summary>Says where a site's maxima go with those that its other feeds, or else the nearest site that can be compared, had a day before.</summary>
    private static IEnumerable<FeedRemark> LateRemarks(GatheredSite site, IReadOnlyList<GatheredSite> all)
    {
        if (site.Series is null) return [];
        (string Feed, DailySeries Series) first = site.Readings[0];
        IEnumerable<(string Name, DailySeries Series)> near = site.Readings.Skip(1).Concat(
            all.Where(other => other != site && other.Series is not null && !IsSameWeather(site.Series, other.Series))
                .Select(other => (other.Site.Name, Series: other.Readings[0].Series, Kilometres: Distance(site.Site, other.Site)))
                .Where(other => other.Kilometres <= NeighbourKm)
                .OrderBy(other => other.Kilometres)
                .Take(MostAskedAboutLateness)
                .Select(other => (other.Name, other.Series)));
        return near.Select(other => (other.Name, Late: LateMaxima.Of(first.Series, other.Series))).Where(other => other.Late is not null).Take(1).Select(other => new FeedRemark(
            $"late maxima {first.Feed}",
            FormattableString.Invariant($"the maxima of {first.Feed} seem to stand a day late: over {other.Late!.Days} days their changes go with those of {other.Name} on the day before ({other.Late.DayBefore:0.00}), not on the same day ({other.Late.SameDay:0.00}); 1.00 would be in step. If it is read in the morning, write \"observed-at: morning\" at the feed; until then each maximum is taken for the day that it stands under.")));
    }

    private static WeatherHistory HistoryOf(CheckedSite site, IReadOnlyList<CheckedSite> all, IReadOnlyList<Forecast> forecasts)
    {
        FillingNeighbour[] others =
        [
            .. site.Gathered.Readings.Skip(1).Select(feed => new FillingNeighbour(feed.Feed, WithoutDoubted(feed.Series, site.Doubts), IsSameSite: true)),
            .. all.Where(other => other != site && !IsSameWeather(site.Gathered.Series!, other.Gathered.Series!))
                .Select(other => (other.Gathered.Site.Name, other.Believed, Kilometres: Distance(site.Gathered.Site, other.Gathered.Site)))
                .Where(other => other.Kilometres <= NeighbourKm)
                .OrderBy(other => other.Kilometres)
                .Select(other => new FillingNeighbour(other.Name, other.Believed)),
        ];
        return WeatherHistory.Of(site.Gathered.Series!, site.Doubts, others, forecasts);
    }

    /// <summary>What a further feed of the site can say against what is doubted: its value, unless it is the very one that was taken and is doubted.</summary>
    private static DailySeries WithoutDoubted(DailySeries feed, IReadOnlyList<Doubt> doubts)
    {
        Doubt[] its = [.. doubts.Where(doubt => feed.Holds(doubt.Day) && feed.Column(doubt.Variable)[feed.IndexOf(doubt.Day)] == doubt.Value)];
        return WeatherHistory.BelievedOnItsDay(feed, [.. its.Select(doubt => doubt with { KnownFrom = doubt.Day })]);
    }

    private static double Distance(Site one, Site other) => new StationPosition(one.Latitude, one.Longitude, null).KilometresTo(other.Latitude, other.Longitude);

    /// <summary>Whether two sites read the same source, so that one can say nothing about the other.</summary>
    private static bool IsSameWeather(DailySeries one, DailySeries other)
    {
        DateOnly last = one.LastDay < other.LastDay ? one.LastDay : other.LastDay;
        int common = 0;
        for (DateOnly day = last; common < ComparedDays && one.Holds(day) && other.Holds(day); day = day.AddDays(-1))
        {
            double lowC = one.MinimumAirC[one.IndexOf(day)] - other.MinimumAirC[other.IndexOf(day)];
            double highC = one.MaximumAirC[one.IndexOf(day)] - other.MaximumAirC[other.IndexOf(day)];
            if (double.IsNaN(lowC + highC)) continue;
            if (lowC != 0 || highC != 0) return false;
            common++;
        }

        return common > 0;
    }

    private sealed record CheckedSite(GatheredSite Gathered, IReadOnlyList<Doubt> Doubts, DailySeries Believed);
}
