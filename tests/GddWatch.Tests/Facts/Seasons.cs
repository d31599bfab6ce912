using GddWatch.Agronomy.Backtesting;
using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Treatments;
using GddWatch.Agronomy.Windows;
using GddWatch.Configuration;
using GddWatch.Feeds;
using GddWatch.Feeds.Archives;
using GddWatch.Feeds.Gathering;
using MathNet.Numerics.Statistics;
using Xunit;

namespace GddWatch.Tests.Facts;

/// <summary>Past seasons of a place under the sample's treatments.</summary>
internal static class Seasons
{
    private static readonly DateOnly Today = new(2026, 1, 1);

    public static WatchConfiguration Sample { get; } = ConfigurationReader.Read(Path.Combine(SharedFiles.RepositoryRoot, "config")).Configuration
        ?? throw new InvalidOperationException("The sample configuration is not sound.");

    /// <summary>The windows of a sample site over all its seasons.</summary>
    public static async Task<IReadOnlyList<Window>> OfSampleAsync(string siteId)
    {
        Site site = Sample.Region.Sites.Single(each => each.Id == siteId);
        return await OfAsync(site, Sample.Feeds[siteId]);
    }

    /// <summary>The windows of a station of the US Climate Reference Network over all its seasons, from estimated or measured soil.</summary>
    public static async Task<IReadOnlyList<Window>> OfStationAsync(string station, double latitude, double longitude, double elevationM, SoilSource soil = SoilSource.Estimated)
    {
        return await OfAsync(Station(station, latitude, longitude, elevationM, soil), [FeedOf(station)]);
    }

    private static ArchiveFeedDefinition FeedOf(string station) =>
        new(ArchiveKind.UscrnDaily, Path.Combine(SharedFiles.Find("weather/uscrn-daily"), "*", $"CRND0103-*-{station}.txt"));

    private static Site Station(string station, double latitude, double longitude, double elevationM, SoilSource soil) => new()
    {
        Id = station,
        Name = station,
        Latitude = latitude,
        Longitude = longitude,
        ElevationM = elevationM,
        TimeZone = "America/Chicago",
        Turf = [TurfType.CoolSeason, TurfType.WarmSeason],
        Soil = SoilTexture.Loam,
        SoilTemperature = soil,
    };

    /// <summary>The daily highs of a station [°C], NaN where they are not known.</summary>
    public static async Task<Func<DateOnly, double>> HighsOfStationAsync(string station, double latitude, double longitude, double elevationM)
    {
        Site site = Station(station, latitude, longitude, elevationM, SoilSource.Estimated);
        IWeatherFeed[] opened = [FeedFactory.Create(FeedOf(station), SharedFiles.RepositoryRoot, TimeProvider.System)];
        GatheredSite weather = await SiteGathering.GatherAsync(site, opened, Today, TestContext.Current.CancellationToken);
        return day => weather.Series!.Holds(day) ? weather.Series.MaximumAirC[weather.Series.IndexOf(day)] : double.NaN;
    }

    /// <summary>The median day of the year of the openings that are certain, by Math.NET.</summary>
    public static double MedianOpeningDay(IReadOnlyList<Window> windows, string treatment)
    {
        double[] days = [.. windows
            .Where(window => window.Treatment.Id == treatment && window.FirstOpening is not null && !window.MayHaveOpenedEarlier)
            .Select(window => (double)window.FirstOpening!.Day.DayOfYear)];
        Assert.True(days.Length >= 5, $"{treatment} opened in only {days.Length} seasons.");
        return days.Median();
    }

    private static async Task<IReadOnlyList<Window>> OfAsync(Site site, IReadOnlyList<FeedDefinition> feeds)
    {
        IWeatherFeed[] opened = [.. feeds.Select(feed => FeedFactory.Create(feed, SharedFiles.RepositoryRoot, TimeProvider.System))];
        GatheredSite weather = await SiteGathering.GatherAsync(site, opened, Today, TestContext.Current.CancellationToken);
        IReadOnlyList<Treatment> treatments = Sample.Treatments;
        return Backtest.Seasons(treatments, SiteMetrics.Of(weather.Series!, site));
    }
}
