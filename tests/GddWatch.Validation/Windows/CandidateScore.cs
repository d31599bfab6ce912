using GddWatch.Agronomy.Treatments;
using GddWatch.Agronomy.Treatments.Conditions;
using GddWatch.Agronomy.Windows;
using MathNet.Numerics.Statistics;

namespace GddWatch.Validation.Windows;

/// <summary>A candidate judged over all seasons of all stations.</summary>
/// <param name="Candidate">The candidate.</param>
/// <param name="Seasons">Its seasons, in the order of the stations.</param>
internal sealed record CandidateScore(OpeningCandidate Candidate, IReadOnlyList<CandidateSeason> Seasons)
{
    /// <summary>Judges every season.</summary>
    /// <param name="candidate">The candidate.</param>
    /// <param name="treatment">The treatment whose opening it stands in for.</param>
    /// <param name="stations">The stations.</param>
    /// <param name="before">The seasons by the opening that it must not be later than; null where it is that one.</param>
    public static CandidateScore Of(OpeningCandidate candidate, Treatment treatment, IReadOnlyList<StationWeather> stations, CandidateScore? before)
    {
        Treatment tried = treatment with { Opens = candidate.Opens };
        var seasons = new List<CandidateSeason>();
        foreach (OpeningPair pair in stations.SelectMany(station => OpeningPair.Of(station, tried)))
        {
            DateOnly? was = (before is null ? pair.Estimated : before.Seasons[seasons.Count].Pair.Estimated).FirstOpening?.Day;
            CrabgrassDates dates = before is null ? CrabgrassDates.Of(pair.Station, pair.Estimated) : before.Seasons[seasons.Count].Dates;
            int? shift = was is { } earlier && pair.Estimated.FirstOpening is { } opening ? opening.Day.DayNumber - earlier.DayNumber : null;
            seasons.Add(new CandidateSeason(pair, dates, shift, DecidedByAirAlone(pair)));
        }

        return new CandidateScore(candidate, seasons);
    }

    /// <summary>Its figures over some of the seasons.</summary>
    public CandidateFigures Over(Func<CandidateSeason, bool> which)
    {
        CandidateSeason[] seasons = [.. Seasons.Where(which)];
        CandidateSeason[] compared = [.. seasons.Where(season => season.Pair.BothOpened && season.Pair.IsWhole)];
        CandidateSeason[] bySoil = [.. compared.Where(season => !season.IsDecidedByAir)];
        double[] shifts = [.. seasons.Where(season => season.LaterThanBefore is not null).Select(season => (double)season.LaterThanBefore!.Value)];
        return new CandidateFigures(
            OpeningFigures.Of([.. seasons.Select(season => season.Pair)]),
            bySoil.Length,
            bySoil.Length == 0 ? double.NaN : bySoil.Average(season => season.Pair.Apart),
            shifts.Length == 0 ? double.NaN : shifts.Median(),
            Ahead(seasons, season => season.Pair.Estimated),
            Ahead(seasons, season => season.Pair.Measured));
    }

    private static AheadOfCrabgrass Ahead(CandidateSeason[] seasons, Func<CandidateSeason, Window> window) => AheadOfCrabgrass.Of(
        [.. seasons.Where(season => window(season).FirstOpening is not null && !window(season).MayHaveOpenedEarlier).Select(season => (window(season).FirstOpening!.Day, season.Dates))]);

    /// <summary>Whether both would have been open the day before already but for the air, so that the air, which both share, set the day. Where no air is asked for it never is.</summary>
    private static bool DecidedByAirAlone(OpeningPair pair) =>
        pair.BothOpened && DecidedByAirAlone(pair.Estimated, pair.Station.Estimated) && DecidedByAirAlone(pair.Measured, pair.Station.Measured);

    private static bool DecidedByAirAlone(Window window, SiteMetrics metrics)
    {
        DateOnly before = window.FirstOpening!.Day.AddDays(-1);
        return before >= window.Season.Span.First && IsSoWhateverTheAir(window.Treatment.Opens, new SeasonView(metrics, window.Season), before);
    }

    private static bool IsSoWhateverTheAir(Condition condition, SeasonView view, DateOnly day) => condition switch
    {
        AllOf all => all.Parts.All(part => IsSoWhateverTheAir(part, view, day)),
        AnyOf any => any.Parts.Any(part => IsSoWhateverTheAir(part, view, day)),
        AirTemperatureCondition => true,
        _ => condition.On(view, day) == Verdict.Yes,
    };
}
