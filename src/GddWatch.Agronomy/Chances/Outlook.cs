using GddWatch.Agronomy.Weather;
using GddWatch.Agronomy.Windows;

namespace GddWatch.Agronomy.Chances;

/// <summary>
/// What the days ahead may bring to a site's windows: each future of the site goes through the same judging as the past did, and the dates on which windows open or close in them are the chances.
/// A pure function of what is known on the day, worked out for each window when it is first asked for. For one reader at a time.
/// </summary>
public sealed class Outlook
{
    /// <summary>A window whose season begins later than in so many days is not looked at yet [days].</summary>
    public const int SeasonAheadDays = 45;

    /// <summary>
    /// The share of the dates' spread by which each date is spread: enough for chances that do not jump from day to day. Chosen at the humid stations of the US Climate Reference Network, both halves in sight (the tool
    /// hindcast of tests/GddWatch.Validation): 0.3 cost 0.005 to 0.01 of skill there.
    /// </summary>
    public const double Spread = 0.1;

    private readonly SiteMetrics metrics;
    private readonly DateOnly day;
    private readonly ForecastInUse forecast;
    private readonly Window[] windows;
    private readonly Lazy<IReadOnlyList<SiteMetrics>> futures;
    private readonly Dictionary<Window, WindowChances> known = new(ReferenceEqualityComparer.Instance);

    private Outlook(IReadOnlyList<Window> windows, SiteMetrics metrics, DateOnly day, DailySeries past, ForecastInUse forecast)
    {
        this.metrics = metrics;
        this.day = day;
        this.forecast = forecast;
        this.windows = [.. windows.Where(window => IsLookedAt(window, metrics, day) && WindowJudge.GoesOn(metrics, window.Season, day))];
        futures = new Lazy<IReadOnlyList<SiteMetrics>>(MakeFutures);

        IReadOnlyList<SiteMetrics> MakeFutures()
        {
            if (this.windows.Length == 0) return [];
            int daysAhead = this.windows.Max(window => window.Season.Span.Last.DayNumber) - metrics.Series.LastDay.DayNumber;
            return Futures.Of(metrics, past, forecast, daysAhead, SeededDraws.SeedOf(metrics.Site.Id, day));
        }
    }

    /// <summary>The chances of all windows that can be said something of.</summary>
    public IReadOnlyList<WindowChances> Chances => [.. windows.Select(Of).OfType<WindowChances>()];

    /// <summary>The chances of the first window that can be said something of: what they rest on is the same for all; null where there is none.</summary>
    public WindowChances? First => windows.Length == 0 ? null : Of(windows[0]);

    /// <summary>What a reader should know of the forecast and the years behind it, a sentence each; none where nothing can be said of any window.</summary>
    public IReadOnlyList<string> Remarks => futures.Value.Count == 0 ? [] : [.. forecast.Remarks, .. Few(futures.Value.Count)];

    /// <summary>What the days ahead may bring to a site's windows.</summary>
    /// <param name="standing">Where the windows stand.</param>
    /// <param name="metrics">The site's weather and journal as of the same day, with the forecast.</param>
    public static Outlook Of(Standing standing, SiteMetrics metrics)
    {
        ArgumentNullException.ThrowIfNull(standing);
        ArgumentNullException.ThrowIfNull(metrics);
        return Of(standing.Windows, metrics, standing.Day, metrics.Series, ForecastInUse.Of(metrics.Weather, standing.Day));
    }

    /// <summary>The same, from past years that may be others than those known on the day: a hindcast leaves out a season and uses all others.</summary>
    /// <param name="windows">The windows as they stand.</param>
    /// <param name="metrics">The site's weather and journal as of the day.</param>
    /// <param name="day">The day.</param>
    /// <param name="past">The weather of the past years.</param>
    /// <param name="forecast">What the forecast gives.</param>
    public static Outlook Of(IReadOnlyList<Window> windows, SiteMetrics metrics, DateOnly day, DailySeries past, ForecastInUse forecast)
    {
        ArgumentNullException.ThrowIfNull(windows);
        ArgumentNullException.ThrowIfNull(metrics);
        ArgumentNullException.ThrowIfNull(past);
        ArgumentNullException.ThrowIfNull(forecast);
        return new Outlook(windows, metrics, day, past, forecast);
    }

    /// <summary>How likely a window opens or closes; null where that cannot be said.</summary>
    /// <param name="window">One of the windows given.</param>
    public WindowChances? Of(Window window)
    {
        if (known.TryGetValue(window, out WindowChances? made)) return made;
        if (!Array.Exists(windows, each => ReferenceEquals(each, window)) || futures.Value.Count == 0) return null;
        made = ChancesOf(window);
        known.Add(window, made);
        return made;
    }

    private static bool IsLookedAt(Window window, SiteMetrics metrics, DateOnly day) =>
        window.State is WindowState.Waiting or WindowState.Nearing or WindowState.Open or WindowState.Closing
        && !window.Treatment.BulletinOnly
        && window.Season.Span.First <= day.AddDays(SeasonAheadDays)
        && window.Treatment.Opens.NeededRecords.All(id => metrics.Journal.LastDone(id, day) is not null);

    private WindowChances ChancesOf(Window window)
    {
        WindowJudge.Onward onward = WindowJudge.OnwardFrom(window.Treatment, metrics.For(window.Season), window.Season, day);
        bool ofClosing = window.IsOpen;
        int lastPlace = window.Season.Span.Last.DayNumber - day.DayNumber;
        var dates = new int?[futures.Value.Count];
        for (int i = 0; i < dates.Length; i++)
        {
            DateOnly? date = ofClosing ? onward.Closes(futures.Value[i]) : onward.Opens(futures.Value[i]);
            dates[i] = date is { } found ? Math.Clamp(found.DayNumber - day.DayNumber, 0, lastPlace) : null;
        }

        int reach = forecast.Count == 0 ? -1 : metrics.Series.LastDay.DayNumber + forecast.Count - day.DayNumber;
        return new WindowChances
        {
            Day = day,
            Window = window,
            OfClosing = ofClosing,
            Distribution = DateDistribution.Of(dates, lastPlace, reach, Spread),
            Years = dates.Length,
            ForecastDays = forecast.Count,
            Remarks = Remarks,
        };
    }

    private static IEnumerable<string> Few(int years)
    {
        if (years < SiteClimate.SeasonsNeeded) yield return $"Only {years} earlier years are known here, and {SiteClimate.SeasonsNeeded} are wanted: the range is wider for that, and less sure.";
    }
}
