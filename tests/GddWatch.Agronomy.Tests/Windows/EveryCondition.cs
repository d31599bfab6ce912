using GddWatch.Agronomy.Heat;
using GddWatch.Agronomy.Journal;
using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Treatments.Conditions;
using GddWatch.Agronomy.Weather;
using GddWatch.Agronomy.Windows;

namespace GddWatch.Agronomy.Tests.Windows;

/// <summary>Every kind of condition, each with all that it can be told, on invented weather that has all that they ask for.</summary>
internal static class EveryCondition
{
    private static readonly HeatSince SinceHeat = new(DegreeDays.FromCelsiusDays(400), Temperature.FromCelsius(5), DegreeDayMethod.DoubleSine);

    public static readonly Condition[] Kinds =
    [
        new AirTemperatureCondition(AirValue.Maximum, 1, Temperature.FromCelsius(10), Temperature.FromCelsius(24), new Holding(2, 3), TemperatureDifference.FromCelsius(2)),
        new AirTemperatureCondition(AirValue.Maximum, 1, null, Temperature.FromCelsius(29), new Holding(1, 1), NextDays: 2),
        Some.SoilRises(10) with { LetsGoAt = Temperature.FromCelsius(8) },
        Some.SoilRises(10, new WhereAlreadySo(28, Temperature.FromCelsius(13), AnnualDay.Of(2, 15), 31)),
        Some.SoilFalls(18),
        Some.Heat(300),
        new HeatSumCondition(
            new HeatSumDefinition(Temperature.FromCelsius(10), null, DegreeDayMethod.SingleSine, DegreeDayCutoff.None, AnnualDay.Of(1, 1), null, new BiofixCondition(7, Temperature.FromCelsius(10))),
            DegreeDays.FromCelsiusDays(100)),
        new GrowthPotentialCondition(TurfType.CoolSeason, 7, Passing.RisesAbove, 0.5, new Holding(3, 5), LetsGoAt: 0.3, Direction: GrowthDirection.Rising),
        new GrowthPotentialCondition(TurfType.WarmSeason, 7, Passing.FallsBelow, 0.5, new Holding(3, 5), OfPeak: 0.8),
        new DaysBeforeGrowthFalls(TurfType.CoolSeason, 0.5, 28, AnnualDay.Of(10, 15)),
        new DaysBeforeGrowthFalls(TurfType.WarmSeason, 0.5, null, null, 60),
        new DaysBeforeFirstFreeze(45, 0.5, Temperature.FromCelsius(0), AnnualDay.Of(10, 15)),
        new DaysAfterLastFreeze(14, 0.5, Temperature.FromCelsius(0), AnnualDay.Of(4, 15)),
        new CalendarGuard(AnnualDay.Of(5, 1), AnnualDay.Of(10, 1)),
        new RainCondition(3, false, WaterDepth.FromMillimetres(10), null),
        new RainCondition(2, true, null, WaterDepth.FromMillimetres(5)),
        new RootZoneDepletionCondition(TurfType.CoolSeason, Passing.RisesAbove, 0.5),
        new RootZoneDepletionCondition(TurfType.WarmSeason, Passing.FallsBelow, null, WaterDepth.FromMillimetres(10)),
        new SinceTreatment("barrier", "Barrier", 42, 70, null, 200),
        new SinceTreatment("barrier", "Barrier", null, null, SinceHeat, 300),
        new AllOf([Some.Heat(100), new Not(new AnyOf([Some.Heat(300), Some.SoilRises(30)]))]),
    ];

    /// <summary>The weather of some years; a treatment is recorded on 10 April of the last one.</summary>
    public static DailySeries Weather(int firstYear, int years, Func<DateOnly, double>? anomalyC = null)
    {
        var builder = new DailySeriesBuilder();
        builder.AddMissingFrom(Some.SmoothYears(firstYear, years, anomalyC: anomalyC));
        for (var day = new DateOnly(firstYear, 1, 1); day.Year < firstYear + years; day = day.AddDays(1))
        {
            builder.Put(day, WeatherVariable.PrecipitationMm, day.DayNumber % 11 == 0 ? 9.3 : day.DayNumber % 4 == 0 ? 1.7 : 0);
        }

        return builder.Build()!;
    }

    public static SiteMetrics Metrics(int firstYear, int years) => Metrics(Weather(firstYear, years), new(firstYear + years - 1, 4, 10));

    /// <summary>The metrics of the weather, with a forecast for the two days after its last one.</summary>
    public static SiteMetrics Metrics(DailySeries weather, DateOnly recorded)
    {
        Site site = Some.Site() with { Soil = SoilTexture.Loam };
        var forecast = new DailySeriesBuilder();
        for (int ahead = 1; ahead <= 2; ahead++)
        {
            forecast.Put(weather.LastDay.AddDays(ahead), WeatherVariable.MinimumAirC, 12);
            forecast.Put(weather.LastDay.AddDays(ahead), WeatherVariable.MaximumAirC, 27);
            forecast.Put(weather.LastDay.AddDays(ahead), WeatherVariable.PrecipitationMm, 1);
        }

        SiteJournal journal = new SiteJournal([new TreatmentDone { SiteId = site.Id, Treatment = "barrier", On = recorded }]).Until(weather.LastDay);
        return SiteMetrics.Of(weather, site, journal, forecast.Build());
    }
}
