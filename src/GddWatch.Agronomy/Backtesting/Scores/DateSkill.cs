namespace GddWatch.Agronomy.Backtesting.Scores;

/// <summary>How much better than another way dates were foretold.</summary>
/// <param name="Skill">1 − mean |error| / mean |error| of the other way: 1 is perfect, 0 no better, negative worse.</param>
/// <param name="Interval">Its interval, by drawing whole years with both ways' errors together; null where there is none.</param>
/// <param name="DaysNearer">By how many days nearer to the observed date it was in the mean [days]; negative is farther.</param>
/// <param name="DaysNearerInterval">Its interval; null where there is none.</param>
/// <param name="Seasons">In how many seasons both foretold a date that was observed.</param>
public sealed record DateSkill(double Skill, ConfidenceInterval? Interval, double DaysNearer, ConfidenceInterval? DaysNearerInterval, int Seasons)
{
    /// <summary>
    /// The skill of one way against another over the seasons that both have, with paired intervals.
    /// <para>Source: science reference 5.3 (skill, paired bootstrap of differences by year); Murphy 1988, Skill scores based on the mean square error and their
    /// relationships to the correlation coefficient, Mon. Weather Rev. 116:2417-2424, here with the absolute error (MEMORY).</para>
    /// </summary>
    /// <param name="pairs">The dates of the one.</param>
    /// <param name="others">The dates of the other.</param>
    /// <param name="drawBelow">The draws for the intervals, as <see cref="Bootstrap.Percentile"/> takes them.</param>
    /// <returns>The skill; null where no season has both, or the other way was never off by a day.</returns>
    public static DateSkill? Of(IReadOnlyList<DatePair> pairs, IReadOnlyList<DatePair> others, Func<int, int> drawBelow)
    {
        ArgumentNullException.ThrowIfNull(pairs);
        ArgumentNullException.ThrowIfNull(others);
        Dictionary<(string, int), DatePair> bySeason = others.Where(pair => pair.ErrorDays is not null).ToDictionary(pair => (pair.Site, pair.Year));
        DatePair[] both = [.. pairs.Where(pair => pair.ErrorDays is not null && bySeason.ContainsKey((pair.Site, pair.Year)))];
        IReadOnlyList<IReadOnlyList<(double Own, double Other)>> groups =
            DateScore.ByYear(both, pair => (Math.Abs((double)pair.ErrorDays!.Value), Math.Abs((double)bySeason[(pair.Site, pair.Year)].ErrorDays!.Value)));
        (double Own, double Other)[] all = [.. groups.SelectMany(group => group)];
        double skill = all.Length == 0 ? double.NaN : SkillOf(all);
        if (double.IsNaN(skill)) return null;
        return new DateSkill(
            skill,
            Bootstrap.Percentile(groups, SkillOf, drawBelow),
            Nearer(all),
            Bootstrap.Percentile(groups, Nearer, drawBelow),
            both.Length);
    }

    private static double SkillOf(IReadOnlyList<(double Own, double Other)> errors)
    {
        double other = errors.Average(each => each.Other);
        return other == 0 ? double.NaN : 1 - errors.Average(each => each.Own) / other;
    }

    private static double Nearer(IReadOnlyList<(double Own, double Other)> errors) => errors.Average(each => each.Other - each.Own);
}
