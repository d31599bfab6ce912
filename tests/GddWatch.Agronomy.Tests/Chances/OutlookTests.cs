using CsCheck;
using GddWatch.Agronomy.Chances;
using GddWatch.Agronomy.Journal;
using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Soil;
using GddWatch.Agronomy.Treatments;
using GddWatch.Agronomy.Treatments.Conditions;
using GddWatch.Agronomy.Weather;
using GddWatch.Agronomy.Windows;
using Xunit;

namespace GddWatch.Agronomy.Tests.Chances;

public sealed class OutlookTests
{
    private static readonly Treatment OnSoil = Some.Treatment(Some.SoilRises(10), closed: Some.SoilRises(18));
    private static readonly Treatment OnHeat = Some.Treatment(Some.Heat(60));

    /// <summary>A climate whose years differ by a slow wave, another one each year.</summary>
    private static readonly DailySeries Weather = Some.SmoothYears(2009, 16, anomalyC: Anomaly);

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void In_a_climate_that_repeats_itself_the_day_is_certain_and_the_one_that_the_judge_finds(bool measured)
    {
        DailySeries whole = Some.SmoothYears(2009, 16);
        foreach (Treatment treatment in (Treatment[])[OnSoil, OnHeat])
        {
            Window truth = Some.Judge(treatment, whole, Site(measured), 2024);
            WindowChances chances = Said(treatment, whole, new DateOnly(2024, 3, 1), measured)!;
            Assert.False(chances.OfClosing);
            Assert.InRange(chances.Median!.Value.DayNumber - truth.FirstOpening!.Day.DayNumber, -1, 1);
            Assert.InRange(chances.Latest!.Value.DayNumber - chances.Earliest.DayNumber, 0, 2);
            Assert.Equal(0, chances.NotAtAll);
        }
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void A_forecast_that_repeats_the_truth_gives_the_truth(bool measured)
    {
        var none = new ForecastErrors([0, 0, 0, 0, 0, 0, 0, 0], [0, 0, 0, 0, 0, 0, 0, 0], 0);
        foreach (Treatment treatment in (Treatment[])[OnSoil, OnHeat])
        {
            foreach (int year in (int[])[2020, 2022, 2024])
            {
                DateOnly opens = Some.Judge(treatment, Weather, Site(measured), year).FirstOpening!.Day;
                DateOnly day = opens.AddDays(-6);
                DailySeries ahead = Weather.From(day.AddDays(1)).Until(day.AddDays(7))!;
                WindowChances chances = Said(treatment, Weather, day, measured, new ForecastInUse(ahead, 0, 7, day, none, []))!;
                Assert.Equal((opens, opens, opens), (chances.Earliest, chances.Median!.Value, chances.Latest!.Value));
                Assert.Equal(1, chances.Within(6), 9);
            }
        }
    }

    [Fact]
    public void Nothing_later_than_the_day_is_looked_at() =>
        Gen.Int[60, 110].Sample(
            dayOfYear =>
            {
                DateOnly day = new DateOnly(2024, 1, 1).AddDays(dayOfYear);
                Forecast later = new(day.AddDays(1), DateTimeOffset.UnixEpoch, Weather.From(day.AddDays(1)));
                WeatherHistory whole = WeatherHistory.Of(Weather, [], [], [later]), cut = WeatherHistory.Of(Weather.Until(day)!, [], [], []);
                Assert.Equal(Curve(whole.AsOf(day)!, day), Curve(cut.AsOf(day)!, day));
            },
            iter: 10);

    [Fact]
    public void The_same_day_gives_the_same_chances_again() =>
        Assert.Equal(Curve(KnownWeather.Undoubted(Weather.Until(new DateOnly(2024, 3, 20))!), new DateOnly(2024, 3, 20)), Curve(KnownWeather.Undoubted(Weather.Until(new DateOnly(2024, 3, 20))!), new DateOnly(2024, 3, 20)));

    [Fact]
    public void A_warm_spring_brings_it_earlier_than_a_cold_one()
    {
        // Departures that fade and do not swing back, as those of real weather: after a swing with a period of its own a cold spell would let expect a warm one.
        var chance = new Random(5);
        double[] departures = new double[17 * 366];
        for (int i = 1; i < departures.Length; i++) departures[i] = (0.85 * departures[i - 1]) + (4 * (chance.NextDouble() - 0.5));
        DateOnly first = new(2009, 1, 1), day = new(2024, 3, 5);
        DateOnly Median(double offsetC) =>
            Said(OnSoil, Some.SmoothYears(2009, 16, anomalyC: each => departures[each.DayNumber - first.DayNumber] + (each.Year == 2024 ? offsetC : 0)), day, measured: true)!.Median!.Value;
        Assert.True(Median(2) < Median(0) && Median(0) < Median(-2), $"{Median(2)} {Median(0)} {Median(-2)}");
    }

    [Fact]
    public void Fewer_than_ten_years_are_said()
    {
        DateOnly day = new(2024, 3, 10);
        WindowChances many = Said(OnHeat, Weather, day)!, few = Said(OnHeat, Weather.From(new DateOnly(2019, 1, 1)), day)!;
        Assert.Equal((15, 5), (many.Years, few.Years));
        Assert.DoesNotContain(many.Remarks, remark => remark.Contains("earlier years"));
        Assert.Contains(few.Remarks, remark => remark.StartsWith("Only 5 earlier years are known here, and 10 are wanted", StringComparison.Ordinal));
    }

    [Fact]
    public void The_fewer_the_years_the_wider_each_goes()
    {
        double Spread(int years)
        {
            double[] column = [.. Enumerable.Repeat(0.0, 20 * 366)];
            DateOnly first = new(2005, 1, 1), day = new(2024, 3, 1);
            DateOnly[] anchors = [.. Enumerable.Range(0, years).Select(i => new DateOnly(2023 - i, 3, 1))];
            for (int i = 0; i < anchors.Length; i++)
            {
                for (int k = -80; k < 120; k++) column[anchors[i].DayNumber - first.DayNumber + k] = i % 2 == 0 ? 1 : -1;
            }

            var course = YearlyCourse.Of(column.AsSpan(0, day.DayNumber - first.DayNumber + 1), first, column, first, day, anchors, 60);
            var path = new DeparturePath(course, new Fading(1, 0, 1), years);
            double[][] ways = [.. Enumerable.Range(0, years).Select(year => path.Of(course.Whole(year), []))];
            double mean = ways.Average(way => way[40]);
            return Math.Sqrt(ways.Average(way => (way[40] - mean) * (way[40] - mean)));
        }

        // √((n + 1)/(n − 1)): 4 years √(5/3), 16 years √(17/15).
        Assert.Equal(Math.Sqrt(5.0 / 3), Spread(4), 2);
        Assert.Equal(Math.Sqrt(17.0 / 15), Spread(16), 2);
    }

    [Fact]
    public void With_two_past_years_nothing_is_said() => Assert.Null(Said(OnHeat, Weather.From(new DateOnly(2022, 1, 1)), new DateOnly(2024, 3, 10)));

    [Fact]
    public void What_the_calendar_alone_decides_is_certain()
    {
        Treatment onDate = Some.Treatment(new CalendarGuard(AnnualDay.Of(4, 15), null));
        WindowChances chances = Said(onDate, Weather, new DateOnly(2024, 3, 1))!;
        Assert.Equal((new DateOnly(2024, 4, 15), new DateOnly(2024, 4, 15)), (chances.Earliest, chances.Latest!.Value));
    }

    [Fact]
    public void A_window_that_cannot_open_is_said_not_to()
    {
        WindowChances chances = Said(Some.Treatment(Some.SoilRises(45)), Weather, new DateOnly(2024, 3, 1))!;
        Assert.Equal(1, chances.NotAtAll, 12);
        Assert.Null(chances.Median);
        Assert.Null(chances.Latest);
    }

    [Fact]
    public void Of_an_open_window_the_closing_is_said()
    {
        Window whole = Some.Judge(OnSoil, Weather, Site(false), 2024);
        WindowChances chances = Said(OnSoil, Weather, whole.FirstOpening!.Day.AddDays(5))!;
        Assert.True(chances.OfClosing);
        Assert.InRange(whole.LastClosing!.Day, chances.Earliest.AddDays(-7), chances.Latest!.Value.AddDays(7));
    }

    [Fact]
    public void A_follow_up_of_what_was_not_recorded_has_no_chances() =>
        Assert.Null(Said(Some.Treatment(new SinceTreatment("another-task", "Another task", 42, null, null, 300)), Weather, new DateOnly(2024, 3, 1)));

    [Fact]
    public void Soil_goes_on_from_where_it_stands_as_if_it_had_been_estimated_in_one_go()
    {
        DateOnly day = new(2023, 3, 3);
        DailySeries known = Weather.Until(day)!;
        SoilTemperatureColumns whole = SoilTemperatureColumns.Estimate(LayeredTurfSoil.Default, Weather, 41.6, Depth.FromCentimetres(5));
        double[] means = new double[Weather.Count], deviations = new double[Weather.Count];
        LayeredTurfSoil.GoOn(LayeredTurfSoil.Default.StandAfter(known, 41.6), Weather, known.Count, Depth.FromCentimetres(5), means, deviations);
        Assert.Equal(whole.MeanC[known.Count..], means[known.Count..]);
        Assert.Equal(whole.DeviationC[known.Count..], deviations[known.Count..]);
    }

    private static double Anomaly(DateOnly day) => 3 * Math.Sin(day.DayNumber / 9.0 + day.Year * day.Year) + 1.5 * Math.Cos(day.Year * 2.7);

    private static Site Site(bool measured) => Some.Site() with { SoilTemperature = measured ? SoilSource.Measured : SoilSource.Estimated };

    private static WindowChances? Said(Treatment treatment, DailySeries weather, DateOnly day, bool measured = false, ForecastInUse? forecast = null)
    {
        KnownWeather known = KnownWeather.Undoubted(weather.Until(day)!);
        SiteMetrics metrics = SiteMetrics.Of(known, Site(measured), SiteJournal.Empty, []);
        Standing standing = WindowJudge.Judge([treatment], metrics, day);
        return Outlook.Of(standing.Windows, metrics, day, metrics.Series, forecast ?? ForecastInUse.None).Chances is [{ } only] ? only : null;
    }

    private static double[] Curve(KnownWeather known, DateOnly day)
    {
        SiteMetrics metrics = SiteMetrics.Of(known, Site(false), SiteJournal.Empty, []);
        return [.. Outlook.Of(WindowJudge.Judge([OnSoil, OnHeat], metrics, day), metrics).Chances.SelectMany(each => Enumerable.Range(0, 120).Select(each.Distribution.By))];
    }
}
