using System.Globalization;
using System.Text;
using GddWatch.Agronomy.Chances;
using GddWatch.Agronomy.Changes;
using GddWatch.Agronomy.Journal;
using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Weather;
using GddWatch.Agronomy.Weather.Checks;
using GddWatch.Agronomy.Windows;
using GddWatch.Feeds.Gathering;
using GddWatch.Watching;
using Xunit;

namespace GddWatch.Tests.Facts;

/// <summary>What is remembered of a site's past from one day's judging to the next.</summary>
public sealed class SiteMemoryTests
{
    private static readonly DateOnly First = new(2009, 3, 14);

    // The law: a day is judged the same with what is remembered and without, to the last word and the last bit. The weather is invented, the same every run: holes, errors, days that change afterwards, rarely ones of
    // years ago; records come late too, and one of the lawns has a soil thermometer.
    [Theory]
    [InlineData(41.3, TurfType.CoolSeason, SoilSource.Estimated, false)]
    [InlineData(-33.1, TurfType.WarmSeason, SoilSource.Estimated, false)]
    [InlineData(36.2, TurfType.CoolSeason, SoilSource.Measured, false)]
    [InlineData(41.3, TurfType.CoolSeason, SoilSource.Estimated, true)]
    public void A_day_is_judged_the_same_whether_the_days_before_are_remembered_or_not(double latitude, TurfType turf, SoilSource soil, bool isProbed)
    {
        var chance = new Random(20_261_128);
        Site site = Lawn(latitude, turf, soil);
        double[][] columns = Weather(latitude, chance);
        List<JournalEntry> entries = [];
        var memory = new SiteMemory();
        int steps = 0;
        for (var day = new DateOnly(2021, 11, 20); day < new DateOnly(2024, 2, 10); day = day.AddDays(chance.Next(1, 31)), steps++)
        {
            int last = day.DayNumber - First.DayNumber - 1;
            columns[0][last - chance.Next(12)] += 1.5;
            columns[2][last - chance.Next(12)] += 3;
            if (steps % 6 == 4) Warm(columns, last - chance.Next(300, 4000));
            if (steps % 4 == 2) entries.Add(new TreatmentDone { SiteId = site.Id, On = day.AddDays(-chance.Next(steps % 8 == 2 ? 30 : 2500)), Treatment = Seasons.Sample.Treatments[chance.Next(Seasons.Sample.Treatments.Count)].Id });
            if (isProbed && steps == 12) entries.Add(new SoilReading { SiteId = site.Id, On = day.AddDays(-40), Depth = Depth.FromCentimetres(5), Value = Temperature.FromCelsius(12) });
            var journal = new SiteJournal(entries);
            SiteWeather weather = WeatherOf(site, Series(columns, last));
            SiteJudging anew = SiteJudging.Judge(Seasons.Sample.Treatments, weather, journal, day), remembered = SiteJudging.Judge(Seasons.Sample.Treatments, weather, journal, day, memory);
            Assert.Equal(Told(anew), Told(remembered));
        }

        Assert.InRange(steps, 40, 80);
    }

    [Fact]
    public void A_long_history_is_not_gone_through_again_each_day()
    {
        Site site = Lawn(41.3, TurfType.CoolSeason, SoilSource.Estimated);
        double[][] columns = Weather(41.3, new Random(5));
        var memory = new SiteMemory();
        SiteMetrics metrics = SiteJudging.Judge(Seasons.Sample.Treatments, WeatherOf(site, Series(columns, 5000)), SiteJournal.Empty, First.AddDays(5001), memory).Metrics!;
        SiteMetrics recent = metrics.OfLast(430);
        Assert.NotSame(metrics, recent);
        Assert.InRange(recent.Series.Count, 3 * 365, (4 * 366) + 256);
        Assert.Same(recent, metrics.For(new Season(2022, new DateSpan(new DateOnly(2022, 3, 1), new DateOnly(2022, 6, 1)))));
        Assert.Same(metrics, metrics.For(new Season(2019, new DateSpan(new DateOnly(2019, 3, 1), new DateOnly(2019, 6, 1)))));
    }

    /// <summary>A source changes some weeks of long ago.</summary>
    private static void Warm(double[][] columns, int first)
    {
        foreach (double[] column in (double[][])[columns[0], columns[1], columns[3], columns[4]])
        {
            for (int i = first; i < first + 60; i++) column[i] += 6;
        }
    }

    /// <summary>All that anybody could be told.</summary>
    private static string Told(SiteJudging judging)
    {
        var text = new StringBuilder();
        foreach (Window window in judging.Standing.Ended.Concat(judging.Standing.Windows))
        {
            text.AppendLine(CultureInfo.InvariantCulture, $"{window.Treatment.Id} {window.Season.Span.First:O} {window.State} {window.Since:O} {window.BegunAnew:O}: {window.Because.Sentence(ReadersUnits.Metric)} {string.Join("; ", window.Because.Figures(ReadersUnits.Metric))}");
            foreach (Transition transition in window.Course) text.AppendLine(CultureInfo.InvariantCulture, $"  {transition.Day:O} {transition.State} {transition.Because.Sentence(ReadersUnits.Metric)}");
        }

        foreach (WindowChances chances in judging.Ahead.Chances)
        {
            text.Append(CultureInfo.InvariantCulture, $"{chances.Window.Treatment.Id} {chances.OfClosing} {chances.Years}:");
            for (int place = 0; place <= chances.Distribution.LastPlace; place++) text.Append(CultureInfo.InvariantCulture, $" {chances.Distribution.By(place):R}");
            text.AppendLine();
        }

        foreach (Notice notice in CalendarPlan.For(judging.Standing, judging.Metrics!, Seasons.Sample.Region, judging.Ahead))
        {
            text.AppendLine(CultureInfo.InvariantCulture, $"{notice.Key} {notice.Headline} {notice.Reason} {notice.ExpectedEnd} {notice.Entry} {string.Join(' ', notice.Choices)} {string.Join(' ', notice.DataRemarks)}");
        }

        return text.ToString();
    }

    private static SiteWeather WeatherOf(Site site, DailySeries series) =>
        new(site, WeatherHistory.Of(series, QualityControl.DoubtsOf(series, []), [], []), [], []);

    private static double[][] Weather(double latitude, Random chance)
    {
        double[][] columns = [.. Enumerable.Range(0, 5).Select(_ => new double[5600])];
        double spell = 0;
        for (int i = 0; i < columns[0].Length; i++)
        {
            spell = (0.7 * spell) + (7 * (chance.NextDouble() - 0.5));
            double mean = (Math.Abs(latitude) > 40 ? 10 : 17) - (12 * Math.Sign(latitude) * Math.Cos(2 * Math.PI * (First.AddDays(i).DayOfYear - 22) / 365.25)) + spell;
            double half = 3 + (5 * chance.NextDouble());
            bool isHole = chance.Next(90) == 0;
            columns[0][i] = isHole ? double.NaN : Math.Round(mean - half, 1);
            columns[1][i] = isHole ? double.NaN : Math.Round(mean + half + (chance.Next(200) == 0 ? 28 : 0), 1);
            columns[2][i] = chance.Next(3) == 0 ? Math.Round(12 * chance.NextDouble(), 1) : 0;
            columns[3][i] = Math.Round(mean + 1, 1);
            columns[4][i] = chance.Next(150) == 0 ? double.NaN : Math.Round(mean + 0.5, 1);
        }

        return columns;
    }

    private static DailySeries Series(double[][] columns, int last)
    {
        WeatherVariable[] variables = [WeatherVariable.MinimumAirC, WeatherVariable.MaximumAirC, WeatherVariable.PrecipitationMm, WeatherVariable.Soil5CmC, WeatherVariable.Soil10CmC];
        var builder = new DailySeriesBuilder(First, First.AddDays(last));
        for (int i = 0; i < variables.Length; i++) builder.Put(First, variables[i], columns[i].AsSpan(0, last + 1));
        return builder.Build()!;
    }

    private static Site Lawn(double latitude, TurfType turf, SoilSource soil) => new()
    {
        Id = "some-lawn",
        Name = "Some Lawn",
        Latitude = latitude,
        Longitude = 0,
        ElevationM = 100,
        TimeZone = "UTC",
        Turf = [turf],
        Grass = turf == TurfType.WarmSeason ? ["bermudagrass"] : ["tall-fescue"],
        Soil = SoilTexture.Loam,
        SoilTemperature = soil,
        History = ["grubs"],
    };
}
