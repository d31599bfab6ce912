using GddWatch.Agronomy.Chances;
using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Treatments;
using GddWatch.Agronomy.Weather;
using GddWatch.Agronomy.Windows;
using GddWatch.Validation.Windows;
using MathNet.Numerics.Statistics;

namespace GddWatch.Validation.Hindcasts;

/// <summary>One station lived through again: each season left out in turn, what would have been said of it some days before its usual date, from what was known then and the other seasons.</summary>
/// <param name="station">The station.</param>
/// <param name="half">Its half.</param>
/// <param name="soil">Whether by estimated or measured soil.</param>
internal sealed class StationHindcast(StationWeather station, int half, SoilSource soil)
{
    /// <summary>The days before the median date on which is said something [days].</summary>
    public static readonly IReadOnlyList<int> Leads = [28, 14, 7, 3];

    /// <summary>So many made-up forecasts for each issue, each with errors of its own, so that the figures hang less on one throw.</summary>
    public const int Draws = 4;

    private const int SeasonsNeeded = 8;
    private const int StillToComeNeeded = 3;

    private readonly Site site = station.Estimated.Site with { SoilTemperature = soil };
    private readonly WeatherHistory history = WeatherHistory.Of(station.Series, [], [], []);
    private readonly SiteMetrics whole = soil == SoilSource.Measured ? station.Measured : station.Estimated;

    /// <summary>What would have been said of a treatment's openings, without and with the made-up forecast, and with one whose errors are not linked from day to day.</summary>
    public HindcastOfStation Run(Treatment treatment, bool alsoUnlinked)
    {
        List<ScoredIssue> without = [], with = [], unlinked = [];
        Dictionary<int, int> offsets = Openings(treatment, out int length);
        if (offsets.Count < SeasonsNeeded) return new HindcastOfStation(without, with, unlinked);
        foreach ((int year, int offset) in offsets)
        {
            Season season = treatment.Season.BeginningIn(year, site.Hemisphere);
            double[] others = [.. offsets.Where(each => each.Key != year).Select(each => (double)each.Value)];
            double median = others.Median();
            if (median >= length) continue;
            foreach (int lead in Leads)
            {
                int issue = (int)Math.Floor(median) - lead;
                DateOnly day = season.Span.First.AddDays(issue);
                if (issue < 0 || offset <= issue || !station.Series.Holds(day)) continue;
                double[] toCome = [.. others.Where(other => other > issue).Select(other => other - issue)];
                if (toCome.Length < StillToComeNeeded) continue;
                int? truth = offset >= length ? null : offset - issue;
                double climate = DateScores.Crps(toCome, offset - issue, fair: true);
                if (Say(treatment, season, day, null) is not { } said) continue;
                int seed = Seed(station.Name, day);
                if (SyntheticForecast.IssuedOn(day, station.Series, seed, isLinked: true) is null) continue;
                without.Add(Scored(said));
                for (int draw = 0; draw < Draws; draw++)
                {
                    if (SyntheticForecast.IssuedOn(day, station.Series, seed + draw, isLinked: true) is { } one && Say(treatment, season, day, one) is { } better) with.Add(Scored(better));
                    if (alsoUnlinked && SyntheticForecast.IssuedOn(day, station.Series, seed + draw, isLinked: false) is { } other && Say(treatment, season, day, other, soilLink: 0) is { } free) unlinked.Add(Scored(free));
                }

                ScoredIssue Scored(DateDistribution distribution) => new(station.Name, half, station.IsHumid, year, lead, distribution, truth, climate);
            }
        }

        return new HindcastOfStation(without, with, unlinked);
    }

    private static int Seed(string name, DateOnly day) => name.Aggregate(day.DayNumber, (hash, letter) => unchecked(hash * 31 + letter * 1009));

    /// <summary>Days from each season's start to its opening; the season's length where it never opened. Seasons that could not be judged, or whose opening is uncertain, or that began open, are left out.</summary>
    private Dictionary<int, int> Openings(Treatment treatment, out int length)
    {
        var offsets = new Dictionary<int, int>();
        length = 0;
        for (int year = whole.Series.FirstDay.Year; year <= whole.Series.LastDay.Year; year++)
        {
            Season season = treatment.Season.BeginningIn(year, site.Hemisphere);
            if (season.Span.First < whole.Series.FirstDay || season.Span.Last > whole.Series.LastDay) continue;
            Window window = WindowJudge.JudgeSeason(treatment, whole, season, season.Span.Last);
            if (window.MayHaveOpenedEarlier || window.CouldNotBeJudged || window.Course.Any(change => change.State == WindowState.Unknown)) continue;
            length = season.Span.Days;
            offsets[year] = window.FirstOpening is { } opening ? opening.Day.DayNumber - season.Span.First.DayNumber : season.Span.Days;
        }

        return offsets;
    }

    private DateDistribution? Say(Treatment treatment, Season season, DateOnly day, Forecast? forecast, double? soilLink = null)
    {
        if (history.AsOf(day) is not { } weather) return null;
        if (forecast is not null) weather = weather with { Forecast = forecast, Issued = [forecast] };
        var metrics = SiteMetrics.Of(weather, site, Agronomy.Journal.SiteJournal.Empty, []);
        Window window = WindowJudge.JudgeSeason(treatment, metrics, season, day);
        if (window.State != WindowState.Waiting) return null;
        ForecastInUse use = forecast is null ? ForecastInUse.None : ForecastInUse.Of(weather, day);
        // What kept forecasts would have taught of errors that are not linked.
        if (soilLink is { } link) use = use with { Errors = use.Errors with { SoilLink = link } };
        return Outlook.Of([window], metrics, day, history.Series, use).Chances is [{ } chances] ? chances.Distribution : null;
    }
}
