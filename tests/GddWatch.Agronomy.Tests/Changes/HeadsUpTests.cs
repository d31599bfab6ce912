using GddWatch.Agronomy.Chances;
using GddWatch.Agronomy.Changes;
using GddWatch.Agronomy.Journal;
using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Treatments;
using GddWatch.Agronomy.Weather;
using GddWatch.Agronomy.Windows;
using Xunit;

namespace GddWatch.Agronomy.Tests.Changes;

public sealed class HeadsUpTests
{
    private static readonly Treatment Task = Some.Treatment(Some.Heat(60)) with { HeadsUp = new HeadsUpRule(14, 0.6, 5) };
    private static readonly DailySeries Weather = Some.SmoothYears(2009, 16, anomalyC: day => 3 * Math.Sin(day.DayNumber / 9.0 + day.Year * day.Year));
    private static readonly Recipient Asks = new() { Address = "asks@example.org", Notices = [NoticeKind.HeadsUp, NoticeKind.Opened] };
    private static readonly Recipient DoesNotAsk = new() { Address = "usual@example.org" };

    [Fact]
    public void It_is_told_once_before_the_window_opens_to_those_who_ask()
    {
        DateOnly opens = Some.Judge(Task, Weather, Some.Site(), 2024).FirstOpening!.Day;
        var told = new Dictionary<string, Told>(StringComparer.Ordinal);
        var headsUps = new List<(DateOnly Day, PlannedNotice Notice)>();
        for (DateOnly day = new(2024, 2, 20); day <= opens.AddDays(3); day = day.AddDays(1))
        {
            foreach (PlannedNotice planned in Plan(day, told))
            {
                if (planned.Notice.Key.Kind == NoticeKind.HeadsUp) headsUps.Add((day, planned));
                foreach (ToldFact fact in planned.Notice.Facts) told[fact.Key with { Revision = 0 } + planned.Recipients[0].Address] = new Told(day, fact.Day, "as-configured", fact.Key.Revision);
            }
        }

        Assert.NotEmpty(headsUps);
        Assert.All(headsUps, each => Assert.Equal([Asks], each.Notice.Recipients));
        Assert.InRange(opens.DayNumber - headsUps[0].Day.DayNumber, 1, 28);
        Assert.True(headsUps[^1].Day < opens);
        // Each later one only because the day of an even chance had moved by five days or more.
        foreach (((DateOnly _, PlannedNotice before), (DateOnly _, PlannedNotice after)) in headsUps.Zip(headsUps.Skip(1)))
        {
            Assert.True(Math.Abs(before.Notice.Facts[0].Day!.Value.DayNumber - after.Notice.Facts[0].Day!.Value.DayNumber) >= 5);
            Assert.Equal(before.Notice.Key.Revision + 1, after.Notice.Key.Revision);
        }
    }

    [Fact]
    public void It_is_told_again_when_the_day_of_an_even_chance_has_moved_and_not_before()
    {
        DateOnly day = Soon();
        Notice first = Assert.Single(Plan(day, [])).Notice;
        DateOnly median = first.Facts[0].Day!.Value;
        Assert.Empty(Plan(day, Before(median.AddDays(4))));
        Notice again = Assert.Single(Plan(day, Before(median.AddDays(5)))).Notice;
        Assert.Equal(1, again.Key.Revision);
        Assert.StartsWith($"This has moved: on Friday 1 March 2024 an even chance was told for {Wording.DayInYear(median.AddDays(5))}, and now it is for {Wording.DayInYear(median)}. ", again.Reason, StringComparison.Ordinal);
    }

    [Fact]
    public void It_says_the_range_in_plain_words_the_chances_and_what_not_to_do_yet()
    {
        Notice notice = Assert.Single(Plan(Soon(), [])).Notice;
        Assert.Matches(@"^Some Lawn: Some task is likely to open between \w+day \d+( \w+)? and \w+day \d+ \w+$", notice.Headline);
        Assert.Matches(@"^The chance that it opens within 14 days is \d+ %, judged by 15 earlier years here, no forecast\. The heat sum ", notice.Reason);
        Assert.Contains(notice.Figures, figure => figure.Name == "Chance that it opens within 7 days" && figure.Value.EndsWith(" %", StringComparison.Ordinal));
        Assert.Equal("Do not start it now: the window is not open yet.", notice.DoNot[0]);
        Assert.Contains("The product's label is the law.", notice.Cautions);
    }

    [Fact]
    public void Its_chart_shows_this_year_with_the_days_on_which_it_is_likely_to_open()
    {
        Notice notice = Assert.Single(Plan(Soon(), [])).Notice;
        Assert.NotNull(notice.Chart?.LikelyFrom);
        Assert.InRange(notice.Facts[0].Day!.Value, notice.Chart.LikelyFrom!.Value, notice.Chart.LikelyUntil!.Value);
        Assert.True(notice.Chart.FirstDay.AddDays(notice.Chart.Panels[0].Curve.Now.Count - 1) >= notice.Chart.LikelyUntil);
        Assert.Contains("It is likely to open from", notice.Chart.Words, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("none", "There is no forecast: ")]
    [InlineData("stale", "too old to be used")]
    [InlineData("hole", "lacks ")]
    [InlineData("contradiction", "contradicts the one of")]
    public void A_forecast_that_is_bad_is_named_in_it_and_survived(string what, string named)
    {
        DateOnly day = Soon();
        Forecast now = Issued(day, 0, what == "hole" ? 3 : null);
        Forecast[] issued = what switch
        {
            "none" => [],
            "stale" => [Issued(day.AddDays(-6), 0, null)],
            "contradiction" => [Issued(day.AddDays(-1), 20, null), now],
            _ => [now],
        };
        PlannedNotice planned = Assert.Single(Plan(day, [], WeatherHistory.Of(Weather, [], [], issued)));
        Assert.Contains(planned.Notice.DataRemarks, remark => remark.Contains(named, StringComparison.Ordinal));
    }

    [Fact]
    public void A_window_that_waits_reads_as_nearing_once_the_chances_say_soon()
    {
        DateOnly day = Soon();
        WindowChances soon = Assert.Single(Outlook.Of(Standing(day, out SiteMetrics metrics), metrics).Chances);
        Assert.Equal(WindowState.Nearing, Nearing.StateOf(soon.Window, soon));
        WindowChances early = Assert.Single(Outlook.Of(Standing(day.AddDays(-50), out metrics), metrics).Chances);
        Assert.Equal(WindowState.Waiting, Nearing.StateOf(early.Window, early));
    }

    [Fact]
    public void Ranges_are_told_with_their_weekdays_and_months_where_they_differ()
    {
        WindowChances chances = Assert.Single(Outlook.Of(Standing(Soon(), out SiteMetrics metrics), metrics).Chances);
        WindowChances With(params int?[] dates) => chances with { Day = new DateOnly(2026, 4, 1), Distribution = DateDistribution.Of(dates, 60, -1, 0) };
        Assert.Equal("between Monday 6 and Thursday 16 April", ChancesWords.Range(With([.. Enumerable.Range(4, 13).Select(day => (int?)day)])));
        Assert.Equal("on Monday 6 April", ChancesWords.Range(With(5, 5, 5)));
        Assert.Equal("from Monday 6 April on, or not at all this season (chance 50 %)", ChancesWords.Range(With(5, null)));
        Assert.Equal("not likely to open any more this season", ChancesWords.Likely(With(null, null)));
        Assert.Equal(("under 1 %", "over 99 %", "0 %", "100 %"), (ChancesWords.Percent(0.001), ChancesWords.Percent(0.999), ChancesWords.Percent(0), ChancesWords.Percent(1)));
    }

    /// <summary>The first day on which it is told.</summary>
    private static DateOnly Soon()
    {
        for (DateOnly day = new(2024, 3, 1); ; day = day.AddDays(1))
        {
            if (Plan(day, []).Any(planned => planned.Notice.Key.Kind == NoticeKind.HeadsUp)) return day;
        }
    }

    private static Dictionary<string, Told> Before(DateOnly median) =>
        new(StringComparer.Ordinal) { [new NoticeKey("some-lawn", "some-task", 2024, NoticeKind.HeadsUp) + Asks.Address] = new Told(new DateOnly(2024, 3, 1), median, "as-configured", 0) };

    private static IReadOnlyList<PlannedNotice> Plan(DateOnly day, Dictionary<string, Told> told, WeatherHistory? history = null)
    {
        Standing standing = Standing(day, out SiteMetrics metrics, history);
        return NoticePlan.For(standing, metrics, Some.Region(Some.Site(), Asks, DoesNotAsk), "as-configured", (key, address) => told.GetValueOrDefault(key with { Revision = 0 } + address), ahead: DaysAhead.Of(standing, metrics));
    }

    private static Standing Standing(DateOnly day, out SiteMetrics metrics, WeatherHistory? history = null)
    {
        metrics = SiteMetrics.Of((history ?? WeatherHistory.Of(Weather, [], [], [])).AsOf(day)!, Some.Site(), SiteJournal.Empty, []);
        return WindowJudge.Judge([Task], metrics, day);
    }

    private static Forecast Issued(DateOnly on, double warmerC, int? without)
    {
        var builder = new DailySeriesBuilder();
        for (int lead = 0; lead <= 7; lead++)
        {
            if (lead == without) continue;
            DateOnly day = on.AddDays(lead);
            builder.Put(day, WeatherVariable.MinimumAirC, Some.SmoothMeanC(day) - 6 + warmerC);
            builder.Put(day, WeatherVariable.MaximumAirC, Some.SmoothMeanC(day) + 6 + warmerC);
        }

        return new Forecast(on, DateTimeOffset.UnixEpoch, builder.Build()!);
    }
}
