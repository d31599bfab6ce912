using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Treatments.Conditions;
using GddWatch.Configuration.Reading;
using Xunit;

namespace GddWatch.Tests.Configuration;

public sealed class OpeningByDateTests
{
    private static readonly SoilTemperatureCondition Soil =
        new(Depth.FromCentimetres(5), 5, Passing.RisesAbove, Temperature.FromCelsius(10), new Holding(3, 5));

    private static readonly SeasonRule OverTheTurnOfTheYear = new(AnnualDay.Of(11, 1), AnnualDay.Of(2, 28));

    [Fact]
    public void The_date_suffices_only_where_nothing_else_must_be_so()
    {
        CalendarGuard date = From(5, 1);

        Assert.True(OpeningByDate.Suffices(date));
        Assert.True(OpeningByDate.Suffices(new AllOf([date, date])));
        Assert.True(OpeningByDate.Suffices(new AnyOf([Soil, date])));
        Assert.True(OpeningByDate.Suffices(new Not(date)));
        Assert.False(OpeningByDate.Suffices(new AllOf([Soil, date])));
        Assert.False(OpeningByDate.Suffices(new Not(Soil)));
        Assert.False(OpeningByDate.Suffices(Soil));
    }

    [Fact]
    public void A_guard_over_the_turn_of_the_year_is_placed_as_the_judge_places_it()
    {
        Assert.False(OpeningByDate.NeverComes(new AllOf([Soil, From(1, 15)]), OverTheTurnOfTheYear));
        Assert.False(OpeningByDate.NeverComes(new AllOf([Soil, From(11, 15)]), OverTheTurnOfTheYear));
        Assert.True(OpeningByDate.NeverComes(new AllOf([Soil, From(3, 15)]), OverTheTurnOfTheYear));
        Assert.True(OpeningByDate.NeverComes(new AllOf([Soil, From(1, 15), Until(1, 14)]), OverTheTurnOfTheYear));
        Assert.False(OpeningByDate.NeverComes(new AnyOf([Soil, From(3, 15)]), OverTheTurnOfTheYear));
    }

    private static CalendarGuard From(int month, int day) => new(AnnualDay.Of(month, day), null);

    private static CalendarGuard Until(int month, int day) => new(null, AnnualDay.Of(month, day));
}
