using GddWatch.Agronomy.Backtesting.Scores;
using Xunit;

namespace GddWatch.Agronomy.Tests.Backtesting;

/// <summary>Scores worked by hand.</summary>
public sealed class DateScoreTests
{
    private static DatePair Pair(int year, int? foretold, int? observed, string site = "a") =>
        new(site, year, Day(year, foretold), Day(year, observed), new DateOnly(year, 8, 1));

    private static DateOnly? Day(int year, int? dayOfApril) => dayOfApril is { } day ? new DateOnly(year, 4, 1).AddDays(day - 1) : null;

    private static DateScore Score(int within, params DatePair[] pairs) => DateScore.Of(pairs, within, new Random(1).Next)!;

    [Fact]
    public void Error_bias_hits_and_misses_are_those_on_paper()
    {
        // Errors +2, −4, 0, +10: mean |e| 4, mean e 2, root mean square √30.
        DateScore score = Score(4, Pair(2001, 12, 10), Pair(2002, 6, 10), Pair(2003, 10, 10), Pair(2004, 20, 10));
        Assert.Equal(4, score.Seasons);
        Assert.Equal(4.0, score.MeanAbsoluteErrorDays, 1e-12);
        Assert.Equal(2.0, score.BiasDays, 1e-12);
        Assert.Equal(Math.Sqrt(30), score.RootMeanSquareErrorDays, 1e-12);
        Assert.Equal((3, 1), (score.Hits, score.Misses));
    }

    [Fact]
    public void A_window_that_never_opened_is_a_miss_dated_the_day_after_its_season()
    {
        DateScore score = Score(7, Pair(2001, null, 10), Pair(2002, 10, 10));
        Assert.Equal((1, 1, 1), (score.Hits, score.Misses, score.NeverForetold));
        int late = new DateOnly(2001, 8, 1).DayNumber - new DateOnly(2001, 4, 10).DayNumber;
        Assert.Equal(late / 2.0, score.MeanAbsoluteErrorDays, 1e-12);
    }

    [Fact]
    public void An_opening_in_a_season_in_which_it_was_looked_for_in_vain_is_a_false_one()
    {
        DateScore score = Score(7, Pair(2001, 10, null), Pair(2002, null, null), Pair(2003, 10, 10));
        Assert.Equal((1, 2, 1), (score.FalseOpenings, score.LookedForInVain, score.Seasons));
        Assert.Null(DateScore.Of([Pair(2001, 10, null)], 7, new Random(1).Next));
    }

    [Fact]
    public void Skill_is_what_is_left_of_the_other_ways_error_over_the_seasons_that_both_have()
    {
        DatePair[] window = [Pair(2001, 12, 10), Pair(2002, 6, 10), Pair(2003, 10, 10), Pair(2004, 20, 10)];
        DatePair[] calendar = [Pair(2001, 2, 10), Pair(2002, 18, 10), Pair(2003, 18, 10)];
        // Over 2001 to 2003: |e| 2, 4, 0 against 8, 8, 8.
        DateSkill skill = DateSkill.Of(window, calendar, new Random(1).Next)!;
        Assert.Equal(0.75, skill.Skill, 1e-12);
        Assert.Equal(6.0, skill.DaysNearer, 1e-12);
        Assert.Equal(3, skill.Seasons);
        // A year's drawing moves both ways' errors together: nearer by 4, 6 or 8 days, never outside.
        Assert.InRange(skill.DaysNearerInterval!.Value.Low, 4, 6);
        Assert.InRange(skill.DaysNearerInterval!.Value.High, 6, 8);
    }

    [Fact]
    public void Against_a_way_that_is_never_off_there_is_no_skill_to_reckon() =>
        Assert.Null(DateSkill.Of([Pair(2001, 12, 10), Pair(2002, 6, 10)], [Pair(2001, 10, 10), Pair(2002, 10, 10)], new Random(1).Next));
}
