using GddWatch.Agronomy.Weather;
using GddWatch.Agronomy.Weather.Checks;
using Xunit;

namespace GddWatch.Agronomy.Tests.Weather.Checks;

/// <summary>Monthly means of known places, and what the check makes of them in either unit.</summary>
public sealed class TemperatureUnitCheckTests
{
    /// <summary>Place, latitude, elevation [m], mean of January and of July [°C]: published climate normals, rounded (MEMORY).</summary>
    public static TheoryData<string, double, double, double, double> Places => new()
    {
        { "Singapore", 1.4, 15, 26.5, 28 },
        { "Quito", -0.2, 2850, 14.5, 14.5 },
        { "Nairobi", -1.3, 1660, 19, 16.5 },
        { "Lima", -12, 30, 23, 17 },
        { "Timbuktu", 16.8, 260, 21.5, 32 },
        { "Honolulu", 21.3, 5, 23, 27 },
        { "Alice Springs", -23.8, 545, 29, 12 },
        { "Miami", 25.8, 5, 20, 29 },
        { "Kuwait", 29.2, 50, 13, 38.5 },
        { "Lhasa", 29.7, 3650, -1, 16.5 },
        { "Shanghai", 31.2, 5, 4.5, 28.5 },
        { "Cape Town", -34, 40, 21, 12.5 },
        { "Buenos Aires", -34.6, 25, 25, 11 },
        { "Death Valley", 36.5, -60, 11.5, 39.5 },
        { "Melbourne", -37.8, 30, 20.5, 10 },
        { "San Francisco", 37.7, 20, 10.5, 17 },
        { "Lisbon", 38.7, 80, 11.5, 23.5 },
        { "Des Moines", 41.5, 290, -5.5, 24.5 },
        { "Christchurch", -43.5, 40, 17.5, 6 },
        { "Ulaanbaatar", 47.9, 1330, -22, 18 },
        { "Winnipeg", 49.9, 240, -16.5, 19.5 },
        { "Scilly Isles", 49.9, 30, 8.5, 17 },
        { "Dublin", 53.4, 70, 5, 15.5 },
        { "Ushuaia", -54.8, 15, 10, 2 },
        { "Anchorage", 61.2, 40, -8.5, 15 },
        { "Yakutsk", 62, 100, -38.5, 19.5 },
        { "Tromsø", 69.7, 10, -4, 12 },
        { "Mount Washington", 44.3, 1917, -15, 9.5 },
    };

    [Theory]
    [MemberData(nameof(Places))]
    public void A_known_climate_is_possible(string place, double latitude, double elevationM, double januaryC, double julyC)
    {
        foreach (TemperatureScale stated in Enum.GetValues<TemperatureScale>())
        {
            TemperatureUnitVerdict verdict = TemperatureUnitCheck.Judge(Year(januaryC, julyC), latitude, elevationM, stated);
            Assert.True(verdict.Finding == TemperatureUnitFinding.Fits, $"{place}: {verdict}");
        }
    }

    [Theory]
    [MemberData(nameof(Places))]
    public void A_year_of_it_in_the_other_unit_is_found(string place, double latitude, double elevationM, double januaryC, double julyC)
    {
        TemperatureUnitVerdict fahrenheit = TemperatureUnitCheck.Judge(Year((januaryC * 1.8) + 32, (julyC * 1.8) + 32), latitude, elevationM, TemperatureScale.Celsius);
        TemperatureUnitVerdict celsius = TemperatureUnitCheck.Judge(Year((januaryC - 32) / 1.8, (julyC - 32) / 1.8), latitude, elevationM, TemperatureScale.Fahrenheit);

        Assert.True(fahrenheit.Finding == TemperatureUnitFinding.OtherUnit, $"{place}: {fahrenheit}");
        Assert.InRange(fahrenheit.AsOtherUnitC, Math.Min(januaryC, julyC) - 1, Math.Max(januaryC, julyC) + 1);
        Assert.True(celsius.Finding == TemperatureUnitFinding.OtherUnit, $"{place}: {celsius}");
    }

    // Lawn climates, from their spring to their autumn: two months are enough.
    [Theory]
    [InlineData(41.5, 4, -5.5, 24.5)]
    [InlineData(41.5, 7, -5.5, 24.5)]
    [InlineData(33.0, 1, 8, 28)]
    [InlineData(53.4, 6, 5, 15.5)]
    [InlineData(-37.8, 11, 20.5, 10)]
    [InlineData(-37.8, 6, 20.5, 10)]
    public void Two_months_are_enough_outside_a_hard_winter(double latitude, int firstMonth, double januaryC, double julyC)
    {
        DailySeries Two(Func<double, double> change) => Year(change(januaryC), change(julyC), firstMonth, 2);

        Assert.NotEqual(TemperatureUnitFinding.OtherUnit, TemperatureUnitCheck.Judge(Two(c => c), latitude, 0, TemperatureScale.Celsius).Finding);
        Assert.NotEqual(TemperatureUnitFinding.OtherUnit, TemperatureUnitCheck.Judge(Two(c => c), latitude, 0, TemperatureScale.Fahrenheit).Finding);
        Assert.Equal(TemperatureUnitFinding.OtherUnit, TemperatureUnitCheck.Judge(Two(c => (c * 1.8) + 32), latitude, 0, TemperatureScale.Celsius).Finding);
        Assert.Equal(TemperatureUnitFinding.OtherUnit, TemperatureUnitCheck.Judge(Two(c => (c - 32) / 1.8), latitude, 0, TemperatureScale.Fahrenheit).Finding);
    }

    // Jungfraujoch (MEMORY): its summer in °F is the number of a hot summer in °C at that latitude, and height does not lower the warm side. No lawn grows there.
    [Fact]
    public void An_icy_height_is_possible_but_cannot_be_told_from_its_numbers_in_Fahrenheit()
    {
        Assert.Equal(TemperatureUnitFinding.Fits, TemperatureUnitCheck.Judge(Year(-13, 0.5), 46.5, 3580, TemperatureScale.Celsius).Finding);
        Assert.NotEqual(TemperatureUnitFinding.OtherUnit, TemperatureUnitCheck.Judge(Year(8.6, 32.9), 46.5, 3580, TemperatureScale.Celsius).Finding);
    }

    [Fact]
    public void Two_months_of_hard_winter_can_be_both() =>
        Assert.Equal(TemperatureUnitFinding.EitherUnit, TemperatureUnitCheck.Judge(Year(-16.5, 19.5, 1, 1), 49.9, 240, TemperatureScale.Celsius).Finding);

    [Fact]
    public void Fewer_days_than_half_a_month_are_not_judged()
    {
        DailySeriesBuilder builder = new();
        for (int day = 1; day < TemperatureUnitCheck.LeastDaysOfAMonth; day++)
        {
            builder.Put(new DateOnly(2024, 7, day), WeatherVariable.MinimumAirC, 70);
            builder.Put(new DateOnly(2024, 7, day), WeatherVariable.MaximumAirC, 90);
        }

        Assert.Equal(TemperatureUnitFinding.TooShort, TemperatureUnitCheck.Judge(builder.Build()!, 45, 0, TemperatureScale.Celsius).Finding);
    }

    [Fact]
    public void The_other_half_of_the_earth_fits_neither_unit() =>
        Assert.Equal(TemperatureUnitFinding.NeitherUnit, TemperatureUnitCheck.Judge(Year(-5.5, 24.5), -41.5, 290, TemperatureScale.Celsius).Finding);

    [Fact]
    public void Height_loosens_the_cold_side_only()
    {
        (double lowC, double highC) = PossibleMonth.At(45, 0, 7);
        (double lowUpC, double highUpC) = PossibleMonth.At(45, 2500, 7);

        Assert.Equal(lowC - 8, lowUpC, 12);
        Assert.Equal(highC, highUpC);
    }

    [Fact]
    public void The_south_has_its_seasons_half_a_year_later_and_milder_winters()
    {
        for (int month = 1; month <= 12; month++)
        {
            (double lowC, double highC) = PossibleMonth.At(40, 0, month);
            (double southernLowC, double southernHighC) = PossibleMonth.At(-40, 0, ((month + 5) % 12) + 1);
            Assert.Equal(highC, southernHighC, 9);
            Assert.True(southernLowC >= lowC - 1e-9, $"Month {month}: {southernLowC} °C against {lowC} °C.");
        }
    }

    [Theory]
    [InlineData(91, 0, 1)]
    [InlineData(double.NaN, 0, 1)]
    [InlineData(45, double.PositiveInfinity, 1)]
    [InlineData(45, 0, 0)]
    [InlineData(45, 0, 13)]
    public void What_is_no_place_or_month_is_refused(double latitude, double elevationM, int month) =>
        Assert.Throws<ArgumentOutOfRangeException>(() => PossibleMonth.At(latitude, elevationM, month));

    private static DailySeries Year(double januaryC, double julyC, int firstMonth = 1, int months = 12)
    {
        DailySeriesBuilder builder = new();
        DateOnly first = new(2023, firstMonth, 1);
        for (DateOnly day = first; day < first.AddMonths(months); day = day.AddDays(1))
        {
            double mean = ((januaryC + julyC) / 2) + ((januaryC - julyC) / 2 * Math.Cos(2 * Math.PI * (day.DayOfYear - 15.5) / 365));
            builder.Put(day, WeatherVariable.MinimumAirC, mean - 4);
            builder.Put(day, WeatherVariable.MaximumAirC, mean + 4);
        }

        return builder.Build()!;
    }
}
