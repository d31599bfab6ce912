using GddWatch.Agronomy.Weather;
using GddWatch.Agronomy.Windows;

namespace GddWatch.Agronomy.Chances;

/// <summary>
/// What the days ahead may bring to a site's windows: each future of the site goes through the same judging as the past did, and the dates on which windows open or close in them are the chances.
/// A pure function of what is known on the day.
/// </summary>
public static class Outlook
{
    /// <summary>A window whose season begins later than in so many days is not looked at yet [days].</summary>
    public const int SeasonAheadDays = 45;

    /// <summary>
    /// The share of the dates' spread by which each date is spread: enough for chances that do not jump from day to day. Chosen at the humid stations of the US Climate Reference Network, both halves in sight (the tool
    /// hindcast of tests/GddWatch.Validation): 0.3 cost 0.005 to 0.01 of skill there.
    /// </summary>
    public const double Spread = 0.1;

    /// <summary>The chances of a site's windows, those of windows that can be said something of.</summary>
    /// <param name="standing">Where the windows stand.</param>
    /// <param name="metrics">The site's weather and journal as of the same day, with the forecast.</param>
    public static IReadOnlyList<WindowChances> Of(Standing standing, SiteMetrics metrics)
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
    public static IReadOnlyList<WindowChances> Of(IReadOnlyList<Window> windows, SiteMetrics metrics, DateOnly day, DailySeries past, ForecastInUse forecast)
    {
        ArgumentNullException.ThrowIfNull(windows);
        ArgumentNullException.ThrowIfNull(metrics);
        ArgumentNullException.ThrowIfNull(forecast);
        (Window Window, WindowJudge.Onward Onward)[] ahead =
        [
            .. from window in windows
               where IsLookedAt(window, metrics, day)
               let onward = WindowJudge.OnwardFrom(window.Treatment, metrics.For(window.Season), window.Season, day)
               where onward is not null
               select (window, onward),
        ];
        if (ahead.Length == 0) return [];
        int daysAhead = ahead.Max(each => each.Window.Season.Span.Last.DayNumber) - metrics.Series.LastDay.DayNumber;
        IReadOnlyList<SiteMetrics> futures = Futures.Of(metrics, past, forecast, daysAhead, SeededDraws.SeedOf(metrics.Site.Id, day));
        if (futures.Count == 0) return [];
        string[] remarks = [.. forecast.Remarks, .. Few(futures.Count)];
        int reach = forecast.Count == 0 ? -1 : metrics.Series.LastDay.DayNumber + forecast.Count - day.DayNumber;
        return [.. ahead.Select(each => ChancesOf(each.Window, each.Onward, futures, day, reach) with { ForecastDays = forecast.Count, Remarks = remarks })];
    }

    private static bool IsLookedAt(Window window, SiteMetrics metrics, DateOnly day) =>
        window.State is WindowState.Waiting or WindowState.Nearing or WindowState.Open or WindowState.Closing
        && !window.Treatment.BulletinOnly
        && window.Season.Span.First <= day.AddDays(SeasonAheadDays)
        && window.Treatment.Opens.NeededRecords.All(id => metrics.Journal.LastDone(id, day) is not null);

    private static WindowChances ChancesOf(Window window, WindowJudge.Onward onward, IReadOnlyList<SiteMetrics> futures, DateOnly day, int reach)
    {
        bool ofClosing = window.IsOpen;
        int lastPlace = window.Season.Span.Last.DayNumber - day.DayNumber;
        var dates = new int?[futures.Count];
        for (int i = 0; i < dates.Length; i++)
        {
            DateOnly? date = ofClosing ? onward.Closes(futures[i]) : onward.Opens(futures[i]);
            dates[i] = date is { } found ? Math.Clamp(found.DayNumber - day.DayNumber, 0, lastPlace) : null;
        }

        return new WindowChances
        {
            Day = day,
            Window = window,
            OfClosing = ofClosing,
            Distribution = DateDistribution.Of(dates, lastPlace, reach, Spread),
            Years = futures.Count,
            ForecastDays = 0,
        };
    }

    private static IEnumerable<string> Few(int years)
    {
        if (years < SiteClimate.SeasonsNeeded) yield return $"Only {years} earlier years are known here, and {SiteClimate.SeasonsNeeded} are wanted: the range is wider for that, and less sure.";
    }
}
