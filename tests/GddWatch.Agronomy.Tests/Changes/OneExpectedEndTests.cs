using GddWatch.Agronomy.Chances;
using GddWatch.Agronomy.Changes;
using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Treatments;
using GddWatch.Agronomy.Treatments.Conditions;
using GddWatch.Agronomy.Weather;
using GddWatch.Agronomy.Windows;
using Xunit;

namespace GddWatch.Agronomy.Tests.Changes;

/// <summary>The expected end of an open window, wherever people read it.</summary>
public sealed class OneExpectedEndTests
{
    private static readonly DailySeries Weather = Some.SmoothYears(2009, 16, anomalyC: day => 3 * Math.Sin(day.DayNumber / 9.0 + day.Year * day.Year));

    private static readonly Treatment[] Tasks =
    [
        Some.Treatment(Some.SoilRises(10), closing: Some.SoilRises(14.4), closed: Some.Heat(300)),
        Some.Treatment(Some.Heat(60), closed: Some.SoilRises(18)),
        Some.Treatment(Some.SoilRises(12), until: "05-31"),
        Some.Treatment(Some.SoilFalls(24), closing: Before(45), closed: Before(25), from: "08-10", until: "12-15"),
    ];

    [Fact]
    public void A_date_that_stands_beside_a_range_lies_within_it_and_mail_calendar_and_bulletin_name_the_same()
    {
        int ranges = 0, days = 0;
        foreach (Treatment task in Tasks)
        {
            foreach (int year in (int[])[2014, 2019, 2023])
            {
                for (DateOnly day = new(year, 2, 1); day.Year == year; day = day.AddDays(5))
                {
                    SiteMetrics metrics = SiteMetrics.Of(Weather.Until(day)!, Some.Site());
                    Standing standing = WindowJudge.Judge([task], metrics, day);
                    Window window = standing.Windows[0];
                    if (!window.IsOpen) continue;
                    DaysAhead ahead = DaysAhead.Of(standing, metrics);
                    WindowChances? chances = ahead.Of(window);
                    var expectation = new Expectation(window, metrics, ahead, day);
                    if (expectation.Close is not { } close) continue;
                    days++;
                    if (chances is not null)
                    {
                        ranges++;
                        Assert.InRange(close, chances.Earliest, chances.Latest!.Value);
                    }

                    Region region = Some.Region(Some.Site());
                    Notice notice = CalendarPlan.For(standing, metrics, region, ahead).Single(each => each.Key.Season == window.Season.Year);
                    Assert.Contains(Wording.Day(close), notice.ExpectedEnd, StringComparison.Ordinal);
                    Assert.Contains(Wording.Day(close), notice.Entry!.EndWords, StringComparison.Ordinal);
                    Assert.Equal(close > window.FirstOpening!.Day ? close : notice.Entry.First.AddDays(1), notice.Entry.End);
                    BulletinLine line = new BulletinWriter([task], [], region).Write(Some.Site(), standing, metrics, ahead, _ => true).Open.Single();
                    Assert.Contains(close > day ? $"{Wording.Days(close.DayNumber - day.DayNumber)} left, until {Wording.DayInYear(close)}" : "about to close", line.Text, StringComparison.Ordinal);
                    if (chances is not null && chances.Latest != chances.Earliest)
                    {
                        Assert.Contains($"({ChancesWords.Likely(chances)})", line.Text, StringComparison.Ordinal);
                        Assert.Contains(ChancesWords.Range(chances), notice.ExpectedEnd, StringComparison.Ordinal);
                    }
                }
            }
        }

        Assert.True(ranges > 50 && days >= ranges, $"Only {ranges} ranges on {days} days were looked at.");
    }

    [Fact]
    public void With_fewer_than_ten_earlier_years_the_days_ahead_say_what_the_usual_pace_cannot()
    {
        DailySeries few = Weather.Until(new DateOnly(2014, 12, 31))!;
        DateOnly opened = Some.Judge(Tasks[0], few, Some.Site(), 2014).FirstOpening!.Day;
        SiteMetrics metrics = SiteMetrics.Of(few.Until(opened)!, Some.Site());
        Standing standing = WindowJudge.Judge([Tasks[0]], metrics, opened);
        Window window = standing.Windows[0];
        Assert.Contains("cannot be said", new Expectation(window, metrics, DaysAhead.Unknown, opened).InWords(), StringComparison.Ordinal);
        string words = new Expectation(window, metrics, DaysAhead.Of(standing, metrics), opened).InWords();
        Assert.Matches(@"^It closes about \w+day \d+ \w+ 2014 \(likely between .*, by 5 earlier years here, no forecast\)\.$", words);
    }

    private static DaysBeforeFirstFreeze Before(int days) => new(days, 0.5, Temperature.FromCelsius(0), AnnualDay.Of(10, 15));
}
