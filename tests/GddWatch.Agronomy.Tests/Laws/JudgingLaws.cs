using CsCheck;
using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Treatments;
using GddWatch.Agronomy.Treatments.Conditions;
using GddWatch.Agronomy.Weather;
using GddWatch.Agronomy.Windows;
using Xunit;

namespace GddWatch.Agronomy.Tests.Laws;

/// <summary>Laws of judging over random years: a smooth climate plus persistent random departures.</summary>
public sealed class JudgingLaws
{
    private static readonly WhereAlreadySo Already = new(28, Temperature.FromFahrenheit(55), AnnualDay.Of(2, 15), 31);

    private static readonly Treatment Spring = Some.Treatment(
        Some.SoilRises(10, Already),
        closing: new AnyOf([Some.SoilRises(14.4), Some.Heat(111)]),
        closed: Some.Heat(300));

    private static readonly Treatment Autumn = Some.Treatment(
        Some.SoilFalls(24),
        closing: new DaysBeforeFirstFreeze(45, 0.5, Temperature.FromCelsius(0), AnnualDay.Of(10, 15)),
        closed: new DaysBeforeFirstFreeze(25, 0.5, Temperature.FromCelsius(0), AnnualDay.Of(10, 15)),
        from: "08-10",
        until: "12-15");

    private static readonly Gen<(double Offset, double[] Noise)> Climate = Gen.Select(Gen.Double[-2, 9], Gen.Double[-4, 4].Array[1100]);

    [Fact]
    public void Judging_day_by_day_equals_judging_the_whole_season_and_cutting_changes_nothing_before_the_cut() =>
        Climate.Sample(
            climate =>
            {
                DailySeries series = Years(climate, 3);
                foreach (Treatment treatment in (ReadOnlySpan<Treatment>)[Spring, Autumn])
                {
                    Window whole = Some.Judge(treatment, series, Some.Site(), 2022);
                    Season season = whole.Season;
                    for (DateOnly day = season.Span.First; day <= season.Span.Last; day = day.AddDays(1))
                    {
                        Window then = Some.Judge(treatment, series, Some.Site(), 2022, day);
                        Transition expected = whole.Transitions.Last(transition => transition.Day <= day);
                        Assert.Equal(expected.State, then.State);
                        Assert.Equal(expected.Day, then.Since);
                    }
                }
            },
            iter: 12,
            seed: "0000KXKkWK54");

    [Fact]
    public void Making_every_day_warmer_never_delays_an_opening_that_waits_for_warmth() =>
        Gen.Select(Climate, Gen.Double[0.1, 4]).Sample(
            (climate, warmer) =>
            {
                Treatment treatment = Some.Treatment(new AllOf([Some.SoilRises(10), Some.Heat(50)]));
                DateOnly? cool = Some.Judge(treatment, Years(climate, 2), Some.Site(), 2021).FirstOpening?.Day;
                DateOnly? warm = Some.Judge(treatment, Years((climate.Offset + warmer, climate.Noise), 2), Some.Site(), 2021).FirstOpening?.Day;
                Assert.True(cool is null || warm <= cool);
            },
            iter: 60,
            seed: "0000KXKkWK54");

    [Fact]
    public void A_southern_site_with_its_weather_half_a_year_later_opens_half_a_year_later()
    {
        // Air and soil are shifted alike, so that the leap day and the length of the shift are all that can differ: 181 days, one either way. (The
        // estimate itself differs a little between the hemispheres: the earth is nearest to the sun in January.)
        Treatment[] treatments = [Some.Treatment(Some.SoilRises(10)), Some.Treatment(Some.Heat(111), closing: new CalendarGuard(Some.Day("05-20"), null)), Autumn];
        foreach (Treatment treatment in treatments)
        {
            Window north = Some.Judge(treatment, Some.SmoothYears(2010, 14), Some.Site(41) with { SoilTemperature = SoilSource.Measured }, 2022);
            // A northern season of the second half of the year comes half a year later in the next calendar year.
            int southernYear = treatment.Season.From.Month > 6 ? 2023 : 2022;
            Window south = Some.Judge(treatment, Some.SmoothYears(2010, 14, shiftDays: AnnualDay.HalfYearDays), Some.Site(-41) with { SoilTemperature = SoilSource.Measured }, southernYear);
            Assert.InRange(south.FirstOpening!.Day.DayNumber - north.FirstOpening!.Day.DayNumber, 180, 182);
            if (north.PastBest is { } past) Assert.InRange(south.PastBest!.Day.DayNumber - past.Day.DayNumber, 180, 182);
        }
    }

    [Fact]
    public void A_window_never_opens_before_its_season_nor_closes_after_it() =>
        Climate.Sample(
            climate =>
            {
                Window window = Some.Judge(Autumn, Years(climate, 2), Some.Site(), 2021);
                Assert.All(window.Transitions, transition => Assert.True(window.Season.Span.Contains(transition.Day)));
            },
            iter: 60,
            seed: "0000KXKkWK54");

    private static DailySeries Years((double Offset, double[] Noise) climate, int years)
    {
        double departure = 0;
        return Some.SmoothYears(2020, years, climate.Offset, anomalyC: day =>
        {
            departure = 0.7 * departure + climate.Noise[day.DayNumber % climate.Noise.Length];
            return departure;
        });
    }
}
