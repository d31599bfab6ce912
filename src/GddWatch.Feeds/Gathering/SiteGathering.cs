using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Weather;
using GddWatch.Feeds.Faults;

namespace GddWatch.Feeds.Gathering;

/// <summary>Reads a site's feeds in order of preference.</summary>
public static class SiteGathering
{
    /// <summary>
    /// Reads all feeds and takes each day's value from the first that has it. A refused feed costs the others nothing. An extreme that contradicts the other
    /// extreme of its day, which a better feed gave, is not taken. Where feeds are far apart on days that both know, that is told.
    /// </summary>
    /// <param name="site">The site.</param>
    /// <param name="feeds">Its feeds, the preferred one first.</param>
    /// <param name="today">Today at the site; later days are not taken.</param>
    /// <param name="stop">Stops the reading.</param>
    public static async Task<GatheredSite> GatherAsync(Site site, IReadOnlyList<IWeatherFeed> feeds, DateOnly today, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(feeds);
        List<Fault> faults = [];
        List<FeedRemark> remarks = [];
        List<(string Feed, DailySeries Series)> readings = [];
        DailySeries? known = null;
        string? best = null;
        foreach (IWeatherFeed feed in feeds)
        {
            FeedReading reading = await feed.ReadAsync(site, today, stop);
            faults.AddRange(reading.Faults);
            remarks.AddRange(reading.Remarks);
            if (reading.Series is not { } series) continue;
            readings.Add((feed.Name, series));
            if (known is not null && FeedsApart.Between(best!, known, feed.Name, series) is { } apart) remarks.Add(apart);
            known = known is null ? series : Add(known, series, feed.Name, faults);
            best ??= feed.Name;
        }

        return new GatheredSite(site, known, faults, remarks, readings);
    }

    private static DailySeries Add(DailySeries known, DailySeries other, string otherName, List<Fault> faults)
    {
        DailySeriesBuilder builder = new();
        builder.AddMissingFrom(known);
        int contradictions = 0;
        foreach (WeatherVariable variable in Enum.GetValues<WeatherVariable>())
        {
            ReadOnlySpan<double> column = other.Column(variable);
            for (int i = 0; i < column.Length; i++)
            {
                if (double.IsNaN(column[i])) continue;
                if (Contradicts(known, other.DayAt(i), variable, column[i])) contradictions++;
                else builder.Put(other.DayAt(i), variable, column[i], other.MarkAt(variable, i));
            }
        }

        if (contradictions > 0) faults.Add(Contradiction(otherName, contradictions));
        return builder.Build()!;
    }

    private static bool Contradicts(DailySeries known, DateOnly day, WeatherVariable variable, double value)
    {
        if (!known.Holds(day)) return false;
        int index = known.IndexOf(day);
        return variable switch
        {
            WeatherVariable.MinimumAirC => double.IsNaN(known.MinimumAirC[index]) && value > known.MaximumAirC[index],
            WeatherVariable.MaximumAirC => double.IsNaN(known.MaximumAirC[index]) && value < known.MinimumAirC[index],
            _ => false,
        };
    }

    private static Fault Contradiction(string feed, int times) => new()
    {
        Severity = FaultSeverity.LeftOut,
        File = feed,
        Problem = $"{DayText.Count(times, "temperature", "temperatures")} could have completed days of a better feed, but would put the minimum above the maximum. Not taken.",
        Accepted = "feeds that agree; look whether they are of the same place and count their days alike.",
    };
}
