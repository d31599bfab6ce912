using CsCheck;
using GddWatch.Agronomy.Treatments.Conditions;
using Xunit;

namespace GddWatch.Agronomy.Tests.Windows;

/// <summary>The one way in which a daily value is judged: holding days, a let-go, the season's start, missing values.</summary>
public sealed class HeldBandTests
{
    private static readonly Holding OnTheDay = new(1, 1);
    private static readonly Band Warm = Band.From(10);
    private static readonly Band Kept = Band.From(8);

    [Fact]
    public void Once_met_it_stays_met_until_the_value_is_past_the_let_go() =>
        Assert.Equal([Verdict.No, Verdict.Yes, Verdict.Yes, Verdict.Yes, Verdict.No, Verdict.No, Verdict.Yes], All(OnTheDay, Kept, 0, 9, 10, 9, 8, 7.9, 9, 10));

    [Fact]
    public void Falling_below_lets_go_on_the_other_side()
    {
        double[] values = [11, 10, 11.5, 12.1, 11];
        Verdict[] found = [.. values.Select((_, i) => On(values, i, 0, Band.UpTo(10), OnTheDay, Band.UpTo(12)))];
        Assert.Equal([Verdict.No, Verdict.Yes, Verdict.Yes, Verdict.No, Verdict.No], found);
    }

    [Fact]
    public void What_may_have_been_met_before_the_record_began_is_unknown_until_it_has_let_go_once() =>
        // The season is three days old when the values begin, between the let-go and the limit: whether it was met on those three days nobody knows.
        Assert.Equal([Verdict.Unknown, Verdict.Unknown, Verdict.No, Verdict.No, Verdict.Yes], All(OnTheDay, Kept, -3, 9, 9, 7, 9, 10));

    [Fact]
    public void A_record_that_begins_late_leaves_nothing_unknown_where_no_let_go_could_have_kept_it() =>
        Assert.Equal([Verdict.No, Verdict.Yes], All(OnTheDay, null, -3, 9, 10));

    [Fact]
    public void What_a_let_go_kept_before_the_season_is_not_kept_into_it() =>
        Assert.Equal([Verdict.No, Verdict.No], All(OnTheDay, Kept, 1, 10, 9, 9)[1..]);

    [Fact]
    public void Days_before_the_season_count_for_the_holding() =>
        Assert.Equal(Verdict.Yes, All(new Holding(3, 3), null, 2, 10, 10, 10)[2]);

    [Fact]
    public void A_missing_value_leaves_unknown_what_it_could_have_changed_and_no_more() =>
        // It may have let go within the hole; the day that is past the limit again, and the one that is past the let-go, are certain.
        Assert.Equal([Verdict.Yes, Verdict.Unknown, Verdict.Unknown, Verdict.Yes, Verdict.No], All(OnTheDay, Kept, 0, 10, double.NaN, 9, 10, 7));

    /// <summary>Against the plain telling of the rule: the missing values tried as cold and as warm ones, met once held, kept until it lets go.</summary>
    [Fact]
    public void It_says_what_a_walk_through_the_season_says_and_unknown_only_where_a_missing_value_decides() =>
        Gen.Select(Gen.Int[5, 13].Array[1, 9], Gen.Int[1, 3], Gen.Int[0, 2], Gen.Bool, Gen.Int[-1, 2]).Sample(
            (drawn, days, more, lets, first) =>
            {
                double[] values = [.. drawn.Select(value => value == 5 ? double.NaN : value)];
                var holding = new Holding(days, days + more);
                for (int today = Math.Max(0, first); today < values.Length; today++)
                {
                    Verdict found = On(values, today, first, Warm, holding, lets ? Kept : null);
                    HashSet<bool> possible = [.. Possible(values, today, first, holding, lets)];
                    if (possible.Count == 1) Assert.Equal(possible.Single() ? Verdict.Yes : Verdict.No, found);
                    else Assert.Equal(Verdict.Unknown, found);
                }
            },
            iter: 20_000,
            seed: "0000KXKkWK54");

    [Fact]
    public void A_day_s_verdict_changes_with_no_later_day() =>
        Gen.Select(Gen.Int[5, 13].Array[2, 30], Gen.Int[1, 3], Gen.Int[-3, 3]).Sample(
            (drawn, days, first) =>
            {
                double[] values = [.. drawn.Select(value => value == 5 ? double.NaN : value)];
                Verdict[] whole = All(new Holding(days, 3), Kept, first, values);
                for (int cut = 1; cut < values.Length; cut++) Assert.Equal(whole[..cut], All(new Holding(days, 3), Kept, first, values[..cut]));
            },
            iter: 1000,
            seed: "0000KXKkWK54");

    [Fact]
    public void Warmer_days_never_take_away_what_only_asks_for_warmth() =>
        Gen.Select(Gen.Double[5, 13].Array[1, 30], Gen.Double[0, 4], Gen.Int[1, 3]).Sample(
            (cool, warmer, days) =>
            {
                double[] warm = [.. cool.Select(value => value + warmer)];
                Verdict[] before = All(new Holding(days, 3), Kept, 0, cool);
                Verdict[] after = All(new Holding(days, 3), Kept, 0, warm);
                Assert.All(before.Zip(after), pair => Assert.True(pair.Second >= pair.First));
            },
            iter: 2000,
            seed: "0000KXKkWK54");

    private static Verdict[] All(Holding holding, Band? stays, int first, params double[] values) =>
        [.. Enumerable.Range(0, values.Length).Select(i => On(values, i, first, Warm, holding, stays))];

    /// <summary>What the verdict could be: more warmth never takes it away, so the missing values, those before the first too, are tried all cold and all warm.</summary>
    private static IEnumerable<bool> Possible(double[] values, int today, int first, Holding holding, bool lets)
    {
        int before = holding.OfDays + Math.Max(0, -first);
        foreach (double missing in (double[])[0, 20])
        {
            double[] tried = [.. Enumerable.Repeat(missing, before), .. values[..(today + 1)].Select(value => double.IsNaN(value) ? missing : value)];
            bool isMet = false;
            for (int i = first + before; i < tried.Length; i++)
            {
                isMet = (isMet && lets && tried[i] >= Kept.Low) || tried[(i - holding.OfDays + 1)..(i + 1)].Count(value => value >= Warm.Low) >= holding.Days;
            }

            yield return isMet;
        }
    }

    private static Verdict On(double[] values, int today, int first, Band band, Holding holding, Band? stays)
    {
        var one = new Verdict[1];
        HeldBand.Judge(values, today, first, band, holding, stays, one);
        return one[0];
    }
}
