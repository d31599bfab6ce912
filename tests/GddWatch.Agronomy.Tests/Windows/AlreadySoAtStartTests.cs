using GddWatch.Agronomy.Heat;
using GddWatch.Agronomy.Journal;
using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Treatments;
using GddWatch.Agronomy.Treatments.Conditions;
using GddWatch.Agronomy.Weather;
using GddWatch.Agronomy.Windows;
using Xunit;

namespace GddWatch.Agronomy.Tests.Windows;

/// <summary>
/// What happens where a condition is met already when the season starts, kind by kind. The season starts on 1 June of a warm, rainy year with ten years before it; each of these has been so for weeks then.
/// </summary>
public sealed class AlreadySoAtStartTests
{
    private static readonly DateOnly Start = new(2022, 6, 1);
    private static readonly Holding Days = new(5, 5);

    /// <summary>Levels, which come and go.</summary>
    public static TheoryData<string> Levels => [.. Level.Keys];

    /// <summary>Sums and dates, which pass once.</summary>
    public static TheoryData<string> Passed => [.. Once.Keys];

    private static readonly Dictionary<string, Condition> Level = new()
    {
        ["soil temperature"] = new SoilTemperatureCondition(Depth.FromCentimetres(5), 5, Passing.RisesAbove, Temperature.FromCelsius(8), Days),
        ["air temperature"] = new AirTemperatureCondition(AirValue.Mean, 3, Temperature.FromCelsius(8), null, Days),
        ["growth potential"] = new GrowthPotentialCondition(TurfType.CoolSeason, 7, Passing.RisesAbove, 0.4, Days),
        ["growth potential of the usual peak"] = new GrowthPotentialCondition(TurfType.CoolSeason, 7, Passing.RisesAbove, 0.4, Days, OfPeak: double.NaN),
        ["days before growth falls"] = new DaysBeforeGrowthFalls(TurfType.CoolSeason, 0.5, null, null, 366),
        ["rain"] = new RainCondition(7, false, WaterDepth.FromMillimetres(10), null),
        ["root-zone depletion"] = new RootZoneDepletionCondition(TurfType.CoolSeason, Passing.FallsBelow, 1),
        ["since a treatment"] = new SinceTreatment("barrier", "Barrier", 14, null, null, 200),
        ["all of several"] = new AllOf([new CalendarGuard(AnnualDay.Of(4, 1), null), new RainCondition(7, false, WaterDepth.FromMillimetres(10), null)]),
        ["not"] = new Not(new RainCondition(7, false, null, WaterDepth.FromMillimetres(1))),
    };

    private static readonly Dictionary<string, Condition> Once = new()
    {
        ["heat sum"] = Some.Heat(50),
        ["heat sum from a biofix"] = new HeatSumCondition(
            new HeatSumDefinition(Temperature.FromCelsius(10), null, DegreeDayMethod.SimpleAverage, DegreeDayCutoff.None, AnnualDay.Of(1, 1), null, new BiofixCondition(7, Temperature.FromCelsius(10))), DegreeDays.FromCelsiusDays(50)),
        ["days before the first freeze"] = new DaysBeforeFirstFreeze(300, 0.5, Temperature.FromCelsius(0), null),
        ["days after the last freeze"] = new DaysAfterLastFreeze(7, 0.5, Temperature.FromCelsius(0), null),
        ["calendar"] = new CalendarGuard(AnnualDay.Of(4, 1), null),
    };

    [Theory]
    [MemberData(nameof(Levels))]
    [MemberData(nameof(Passed))]
    public void Every_kind_opens_on_the_season_s_first_day_where_it_has_been_so_for_long_enough(string kind)
    {
        Window window = Judge(Some.Treatment(Of(kind), from: "06-01", until: "09-30"));
        Assert.Equal(Start, window.FirstOpening?.Day);
    }

    [Theory]
    [MemberData(nameof(Levels))]
    public void A_level_that_has_been_so_since_before_the_season_does_not_end_a_window_that_waits(string kind)
    {
        Window window = Judge(Some.Treatment(new CalendarGuard(AnnualDay.Of(6, 5), null), closed: Level[kind], from: "06-01", until: "09-30"), Start.AddDays(3));
        Assert.Equal((WindowState.Waiting, Start), (window.State, window.Since));
    }

    [Theory]
    [MemberData(nameof(Passed))]
    public void A_sum_or_a_date_that_is_past_already_ends_it_on_its_first_day(string kind)
    {
        Window window = Judge(Some.Treatment(new CalendarGuard(AnnualDay.Of(6, 5), null), closed: Once[kind], from: "06-01", until: "09-30"), Start.AddDays(3));
        Assert.Equal((WindowState.Closed, Start, null), (window.State, window.Since, window.FirstOpening?.Day));
    }

    [Fact]
    public void Soil_alone_can_be_told_to_wait_for_its_usual_date_where_it_is_already_so()
    {
        var wait = new WhereAlreadySo(7, Temperature.FromCelsius(23), AnnualDay.Of(6, 15), 10);
        var soil = (SoilTemperatureCondition)Level["soil temperature"] with { WhereAlreadySo = wait };
        Window window = Judge(Some.Treatment(soil, from: "06-01", until: "09-30"));
        Assert.True(window.FirstOpening!.Day > Start);
        Assert.Contains("past it when the season started", window.FirstOpening.Because.Sentence(ReadersUnits.Metric), StringComparison.Ordinal);
    }

    private static Condition Of(string kind) => Level.TryGetValue(kind, out Condition? level) ? level : Once[kind];

    private static Window Judge(Treatment treatment, DateOnly? day = null)
    {
        var builder = new DailySeriesBuilder();
        builder.AddMissingFrom(Some.SmoothYears(2009, 14));
        for (var each = new DateOnly(2009, 1, 1); each.Year < 2023; each = each.AddDays(1)) builder.Put(each, WeatherVariable.PrecipitationMm, 5);
        Site site = Some.Site() with { Soil = SoilTexture.Loam };
        var journal = new SiteJournal([new TreatmentDone { SiteId = site.Id, Treatment = "barrier", On = new(2022, 5, 1) }]);
        DateOnly asOf = day ?? new(2022, 9, 30);
        return WindowJudge.JudgeSeason(treatment, SiteMetrics.Of(builder.Build()!.Until(asOf)!, site, journal), treatment.Season.BeginningIn(2022, Hemisphere.Northern), asOf);
    }
}
