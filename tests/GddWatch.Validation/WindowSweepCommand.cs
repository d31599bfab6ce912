using System.Globalization;
using GddWatch.Agronomy.Treatments;
using GddWatch.Configuration;
using GddWatch.Validation.Windows;
using MathNet.Numerics;

namespace GddWatch.Validation;

/// <summary>
/// Tries openings of the spring pre-emergent. An opening is chosen on half of the humid stations and looked at on the other half, stations near to each other always on the same side.
/// Only those may be chosen that are no worse for what the treatment is for: at humid and at dry stations at most 3 days later than the opening before in the median season, a median
/// lead on a week at 55 °F within 3 days of what it was, either way, and no more openings after such a week in spring. Openings more than six weeks before it are shown and not limited.
/// </summary>
internal static class WindowSweepCommand
{
    private const int MostDaysMoved = 3;
    private const int RandomHalves = 200;
    private const int Seed = 20231;

    public static async Task RunAsync(string configuration, string weather, TextWriter output, CancellationToken stop)
    {
        ConfigurationReading reading = ConfigurationReader.Read(configuration);
        if (reading.Configuration is not { } read) throw new InvalidDataException(string.Join('\n', reading.Faults));
        Treatment treatment = read.Treatments.FirstOrDefault(each => each.Id == CrabgrassDates.Treatment) ?? throw new InvalidDataException($"The configuration has no treatment {CrabgrassDates.Treatment}.");
        IReadOnlyList<StationWeather> stations = await StationReader.ReadAsync(Path.Combine(weather, "uscrn-daily"), stop);
        CandidateScore before = CandidateScore.Of(OpeningCandidate.Before, treatment, stations, null);
        List<CandidateScore> scores = [before, CandidateScore.Of(new OpeningCandidate("as configured", treatment.Opens), treatment, stations, before)];
        scores.AddRange(OpeningCandidate.All().Skip(1).Select(candidate => CandidateScore.Of(candidate, treatment, stations, before)));
        int[] neighbourhoods = [.. stations.Where(station => station.IsHumid).Select(station => station.Neighbourhood).Distinct()];

        HashSet<int> fixedHalf = [.. neighbourhoods.Where((_, index) => index % 2 == 0)];
        output.WriteLine("candidate; may be chosen; humid: compared, mean, median, of them soil has a say, their mean, opened by one alone; later than before in the median; lead on a week at 55 °F; late in spring; more than six weeks early; with holes: mean, median; one half: mean, median; other half: mean, median; dry: mean, median, later than before, lead, late in spring, more than six weeks early");
        CandidateFigures allowed = before.Over(season => season.Pair.Station.IsHumid);
        CandidateFigures allowedDry = before.Over(season => !season.Pair.Station.IsHumid);
        foreach (CandidateScore score in scores.OrderBy(score => score.Over(season => season.Pair.Station.IsHumid).Openings.Mean)) Row(output, score, IsAllowed(score, _ => true, allowed, allowedDry), fixedHalf);

        output.WriteLine("\nchosen on one half; mean, median there; mean, median on the other half; the opening before on the other half");
        output.WriteLine(Chosen(scores, fixedHalf.Contains));
        output.WriteLine(Chosen(scores, number => !fixedHalf.Contains(number)));
        OnRandomHalves(output, scores, neighbourhoods);
    }

    private static void OnRandomHalves(TextWriter output, List<CandidateScore> scores, int[] neighbourhoods)
    {
        var random = new Random(Seed);
        List<(string Name, double Mean, double Median, double Before)> outside = [];
        for (int i = 0; i < RandomHalves; i++)
        {
            int[] order = [.. neighbourhoods];
            Combinatorics.SelectPermutationInplace(order, random);
            HashSet<int> half = [.. order.Take(order.Length / 2)];
            CandidateScore best = Best(scores, half.Contains);
            bool IsOther(CandidateSeason season) => season.Pair.Station.IsHumid && !half.Contains(season.Pair.Station.Neighbourhood);
            OpeningFigures other = best.Over(IsOther).Openings;
            outside.Add((best.Candidate.Name, other.Mean, other.Median, scores[0].Over(IsOther).Openings.Mean));
        }

        output.WriteLine(FormattableString.Invariant($"\n{RandomHalves} random halves: on the other half mean {outside.Average(each => each.Mean):0.00} (by the opening before {outside.Average(each => each.Before):0.00}), at most 4.5 in {outside.Count(each => each.Mean <= 4.5)}, median at most 2 in {outside.Count(each => each.Median <= 2)}; chosen:"));
        foreach (var chosen in outside.GroupBy(each => each.Name).OrderByDescending(group => group.Count()))
        {
            output.WriteLine(FormattableString.Invariant($"  {chosen.Count(),3} times {chosen.Key}, mean {chosen.Average(each => each.Mean):0.00} on the other half"));
        }
    }

    private static string Chosen(List<CandidateScore> scores, Func<int, bool> half)
    {
        CandidateScore best = Best(scores, half);
        bool Here(CandidateSeason season) => season.Pair.Station.IsHumid && half(season.Pair.Station.Neighbourhood);
        bool There(CandidateSeason season) => season.Pair.Station.IsHumid && !half(season.Pair.Station.Neighbourhood);
        (OpeningFigures here, OpeningFigures there, OpeningFigures before) = (best.Over(Here).Openings, best.Over(There).Openings, scores[0].Over(There).Openings);
        return string.Create(CultureInfo.InvariantCulture, $"{best.Candidate.Name}; {here.Mean:0.00}, {here.Median:0.#}; {there.Mean:0.00}, {there.Median:0.#}; {before.Mean:0.00}, {before.Median:0.#}");
    }

    private static CandidateScore Best(List<CandidateScore> scores, Func<int, bool> half)
    {
        CandidateFigures humid = scores[0].Over(season => season.Pair.Station.IsHumid && half(season.Pair.Station.Neighbourhood));
        CandidateFigures dry = scores[0].Over(season => !season.Pair.Station.IsHumid);
        return scores.Where(score => IsAllowed(score, half, humid, dry)).MinBy(score => score.Over(season => season.Pair.Station.IsHumid && half(season.Pair.Station.Neighbourhood)).Openings.Mean)!;
    }

    private static bool IsAllowed(CandidateScore score, Func<int, bool> half, CandidateFigures humidBefore, CandidateFigures dryBefore)
    {
        CandidateFigures humid = score.Over(season => season.Pair.Station.IsHumid && half(season.Pair.Station.Neighbourhood));
        CandidateFigures dry = score.Over(season => !season.Pair.Station.IsHumid);
        return IsNoWorse(humid, humidBefore) && IsNoWorse(dry, dryBefore);
    }

    private static bool IsNoWorse(CandidateFigures found, CandidateFigures before) =>
        found.LaterThanBefore <= MostDaysMoved && Math.Abs(found.Lead - before.Lead) <= MostDaysMoved
        && found.LateInSpring <= before.LateInSpring;

    private static void Row(TextWriter output, CandidateScore score, bool isAllowed, HashSet<int> half)
    {
        CandidateFigures humid = score.Over(season => season.Pair.Station.IsHumid);
        CandidateFigures dry = score.Over(season => !season.Pair.Station.IsHumid);
        OpeningFigures one = score.Over(season => season.Pair.Station.IsHumid && half.Contains(season.Pair.Station.Neighbourhood)).Openings;
        OpeningFigures other = score.Over(season => season.Pair.Station.IsHumid && !half.Contains(season.Pair.Station.Neighbourhood)).Openings;
        output.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"{score.Candidate.Name}; {(isAllowed ? "yes" : "no")}; {humid.Openings.Apart.Length}, {humid.Openings.Mean:0.00}, {humid.Openings.Median:0.#}, {humid.BySoil}, {humid.MeanBySoil:0.00}, {humid.Openings.OnlyEstimated + humid.Openings.OnlyMeasured}; {humid.LaterThanBefore:0.#}; {humid.Lead:0.#}; {humid.LateInSpring}; {humid.AheadByEstimate.EarlierThanSixWeeks}; {humid.Openings.MeanWithHoles:0.00}, {humid.Openings.MedianWithHoles:0.#}; {one.Mean:0.00}, {one.Median:0.#}; {other.Mean:0.00}, {other.Median:0.#}; {dry.Openings.Mean:0.00}, {dry.Openings.Median:0.#}, {dry.LaterThanBefore:0.#}, {dry.Lead:0.#}, {dry.LateInSpring}, {dry.AheadByEstimate.EarlierThanSixWeeks}"));
    }
}
