using GddWatch.Agronomy.Backtesting.Scores;
using GddWatch.Agronomy.Treatments;
using GddWatch.Agronomy.Windows;

namespace GddWatch.Agronomy.Backtesting.Rivals;

/// <summary>The past seasons of one treatment beside the other ways and beside what was seen.</summary>
/// <param name="Treatment">The treatment.</param>
/// <param name="Seasons">Its seasons, site by site and year by year.</param>
/// <param name="RunningMean">The rule on a running mean of air temperature that it is compared with; null where there is none.</param>
public sealed record TreatmentComparison(Treatment Treatment, IReadOnlyList<ComparedSeason> Seasons, RunningMeanRule? RunningMean)
{
    /// <summary>Puts the windows of one treatment beside the other ways and what was seen.</summary>
    /// <param name="treatment">The treatment.</param>
    /// <param name="windows">Its windows over all seasons and sites, judged without a journal.</param>
    /// <param name="runningMeans">The dates of <see cref="RivalDates.RunningMean"/> by site and year.</param>
    /// <param name="observed">Everything that was seen; what has nothing to do with the treatment is passed over.</param>
    public static TreatmentComparison Of(
        Treatment treatment,
        IReadOnlyList<Window> windows,
        IReadOnlyDictionary<(string Site, int Year), DateOnly> runningMeans,
        ObservedDates observed)
    {
        ArgumentNullException.ThrowIfNull(treatment);
        ArgumentNullException.ThrowIfNull(windows);
        ArgumentNullException.ThrowIfNull(runningMeans);
        ArgumentNullException.ThrowIfNull(observed);
        (Window Window, Target? Target)[] seasons = [.. windows.Select(window => (window, Target.Of(treatment, window.Site.Id, window.Season, observed)))];
        var seen = new BestFixedDates(seasons
            .Where(each => each.Target?.Day is not null)
            .Select(each => (each.Window.Site.Id, each.Window.Season.Year, each.Target!.Day!.Value.DayNumber - each.Window.Season.Span.First.DayNumber)));
        BestFixedDates best = !seen.IsEmpty ? seen : new BestFixedDates(windows
            .Select(window => new SeasonDates(window))
            .Where(dates => dates.OpensForCertain is not null)
            .Select(dates => (dates.Site, dates.Year, dates.OpensForCertain!.Value.DayNumber - dates.Window.Season.Span.First.DayNumber)));
        return new TreatmentComparison(
            treatment,
            [.. seasons.Select(each => new ComparedSeason(
                new SeasonDates(each.Window),
                RivalDates.Calendar(treatment, each.Window.Season, each.Window.Site.Hemisphere),
                best.For(each.Window.Site.Id, each.Window.Season),
                runningMeans.TryGetValue((each.Window.Site.Id, each.Window.Season.Year), out DateOnly mean) ? mean : null,
                each.Target?.Day,
                each.Target is { Day: null }))],
            RivalDates.RunningMeanOf(treatment));
    }

    /// <summary>Whether anything was seen, or looked for in vain, in any of its seasons.</summary>
    public bool HasObservations => Seasons.Any(season => season.Seen is not null || season.LookedForInVain);

    /// <summary>
    /// The dates of one way beside what was seen. A season in which the window may have opened earlier than is known, or could not be judged, is left out, as is a season in which the
    /// way has no date because it was not asked for.
    /// </summary>
    public IReadOnlyList<DatePair> Pairs(Rival rival) => [.. Seasons
        .Where(season => season.Seen is not null || season.LookedForInVain)
        .Where(season => rival switch
        {
            Rival.Window => !season.Dates.Window.MayHaveOpenedEarlier && !season.Dates.Window.CouldNotBeJudged,
            Rival.RunningMean => RunningMean is not null,
            _ => season.DateBy(rival) is not null,
        })
        .Select(season => new DatePair(season.Dates.Site, season.Dates.Year, season.DateBy(rival), season.Seen, season.Dates.NeverCountsAs))];
}
