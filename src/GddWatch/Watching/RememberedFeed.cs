using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Weather;
using GddWatch.Feeds;
using GddWatch.Storage;

namespace GddWatch.Watching;

/// <summary>A feed of files whose changed values are known by what was kept of it: they are marked as corrected.</summary>
internal sealed class RememberedFeed(IWeatherFeed feed, KeptWeather kept) : IWeatherFeed
{
    public string Name => feed.Name;

    public async Task<FeedReading> ReadAsync(Site site, DateOnly today, CancellationToken stop)
    {
        FeedReading reading = await feed.ReadAsync(site, today, stop);
        return reading.Series is { } series && kept.Days.TryGetValue((site.Id, Name), out DailySeries? before) ? reading with { Series = Marked(series, before) } : reading;
    }

    private static DailySeries Marked(DailySeries series, DailySeries before)
    {
        Mark[] minimumMarks = series.MinimumMarks.ToArray(), maximumMarks = series.MaximumMarks.ToArray();
        for (int i = 0; i < before.Count; i++)
        {
            int index = series.IndexOf(before.DayAt(i));
            if ((uint)index >= (uint)series.Count) continue;
            if (before.MinimumMarks[i] == Mark.Corrected) minimumMarks[index] = Mark.Corrected;
            if (before.MaximumMarks[i] == Mark.Corrected) maximumMarks[index] = Mark.Corrected;
        }

        return series.WithAirTemperature(series.MinimumAirC.ToArray(), series.MaximumAirC.ToArray(), minimumMarks, maximumMarks);
    }
}
