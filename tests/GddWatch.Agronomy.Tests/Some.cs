using GddWatch.Agronomy.Heat;
using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Treatments;
using GddWatch.Agronomy.Treatments.Conditions;
using GddWatch.Agronomy.Weather;
using GddWatch.Agronomy.Windows;

namespace GddWatch.Agronomy.Tests;

/// <summary>Valid made-up values for tests.</summary>
internal static class Some
{
    public static Site Site(double latitude = 41.6, params TurfType[] turf) => new()
    {
        Id = "some-lawn",
        Name = "Some Lawn",
        Latitude = latitude,
        Longitude = -93.3,
        ElevationM = 250,
        TimeZone = "America/Chicago",
        Turf = turf.Length == 0 ? [TurfType.CoolSeason] : turf,
    };

    /// <summary>Years of a smooth sinusoidal climate: mean 11 °C, amplitude 13 °C, range 12 °C, warmest on 15 July (science reference 1.8).</summary>
    public static DailySeries SmoothYears(int firstYear, int years, double offsetC = 0, int shiftDays = 0, Func<DateOnly, double>? anomalyC = null)
    {
        var builder = new DailySeriesBuilder();
        var last = new DateOnly(firstYear + years - 1, 12, 31);
        for (var day = new DateOnly(firstYear, 1, 1); day <= last; day = day.AddDays(1))
        {
            double mean = SmoothMeanC(day.AddDays(-shiftDays)) + offsetC + (anomalyC?.Invoke(day) ?? 0);
            builder.Put(day, WeatherVariable.MinimumAirC, mean - 6);
            builder.Put(day, WeatherVariable.MaximumAirC, mean + 6);
            builder.Put(day, WeatherVariable.Soil5CmC, mean + 1.5);
        }

        return builder.Build()!;
    }

    public static double SmoothMeanC(DateOnly day) => 11 + 13 * Math.Sin(2 * Math.PI * (day.DayOfYear - 105) / 365);

    public static Treatment Treatment(Condition opens, Condition? closing = null, Condition? closed = null, string from = "01-01", string until = "07-31") => new()
    {
        Id = "some-task",
        Name = "Some task",
        Turf = [TurfType.CoolSeason, TurfType.WarmSeason],
        Season = new SeasonRule(Day(from), Day(until)),
        Opens = opens,
        Closing = closing,
        Closed = closed,
        Do = ["Do it."],
        DoNot = ["Do not overdo it."],
        Cautions = ["The product's label is the law."],
    };

    public static SoilTemperatureCondition SoilRises(double celsius, WhereAlreadySo? already = null) =>
        new(Depth.FromCentimetres(5), 5, Passing.RisesAbove, Temperature.FromCelsius(celsius), new Holding(3, 5), already);

    public static SoilTemperatureCondition SoilFalls(double celsius) =>
        new(Depth.FromCentimetres(5), 5, Passing.FallsBelow, Temperature.FromCelsius(celsius), new Holding(3, 5));

    public static HeatSumCondition Heat(double reachesCelsiusDays, double baseC = 10) => new(
        new HeatSumDefinition(Temperature.FromCelsius(baseC), null, DegreeDayMethod.SimpleAverage, DegreeDayCutoff.None, AnnualDay.Of(1, 1)),
        DegreeDays.FromCelsiusDays(reachesCelsiusDays));

    public static AnnualDay Day(string text) => AnnualDay.Of(int.Parse(text[..2]), int.Parse(text[3..]));

    public static Region Region(Site site, params Recipient[] recipients) => new()
    {
        Name = "Some Region",
        TimeZone = "America/Chicago",
        Units = ReadersUnits.UnitedStates,
        Sites = [site],
        Recipients = recipients,
        OperatorAddress = "operator@example.org",
    };

    public static Window Judge(Treatment treatment, DailySeries series, Site site, int season, DateOnly? day = null)
    {
        Season span = treatment.Season.BeginningIn(season, site.Hemisphere);
        DateOnly asOf = day ?? span.Span.Last;
        return WindowJudge.JudgeSeason(treatment, SiteMetrics.Of(series.Until(asOf) ?? series, site), span, asOf);
    }
}
