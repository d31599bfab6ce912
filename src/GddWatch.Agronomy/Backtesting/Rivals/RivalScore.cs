using GddWatch.Agronomy.Backtesting.Scores;

namespace GddWatch.Agronomy.Backtesting.Rivals;

/// <summary>How well one way to find the day did against what was seen.</summary>
/// <param name="Rival">The way.</param>
/// <param name="Score">Its score.</param>
/// <param name="AgainstCalendar">Its skill against the fixed calendar date; null where there is none, or it is that date itself.</param>
/// <param name="AgainstBestFixedDate">Its skill against the best fixed date by the other years; null where there is none, or it is that date itself.</param>
public sealed record RivalScore(Rival Rival, DateScore Score, DateSkill? AgainstCalendar, DateSkill? AgainstBestFixedDate)
{
    /// <summary>The scores of all ways that have a date, the window first.</summary>
    /// <param name="comparison">The seasons of a treatment.</param>
    /// <param name="withinDays">The range of a hit [days].</param>
    /// <param name="freshDraws">Gives draws that begin anew, so that no score hangs on which others were asked for.</param>
    public static IReadOnlyList<RivalScore> Of(TreatmentComparison comparison, int withinDays, Func<Func<int, int>> freshDraws)
    {
        ArgumentNullException.ThrowIfNull(comparison);
        ArgumentNullException.ThrowIfNull(freshDraws);
        var scores = new List<RivalScore>();
        foreach (Rival rival in Enum.GetValues<Rival>())
        {
            IReadOnlyList<DatePair> pairs = comparison.Pairs(rival);
            if (DateScore.Of(pairs, withinDays, freshDraws()) is not { } score) continue;
            scores.Add(new RivalScore(
                rival,
                score,
                rival == Rival.Calendar ? null : DateSkill.Of(pairs, comparison.Pairs(Rival.Calendar), freshDraws()),
                rival == Rival.BestFixedDate ? null : DateSkill.Of(pairs, comparison.Pairs(Rival.BestFixedDate), freshDraws())));
        }

        return scores;
    }
}
