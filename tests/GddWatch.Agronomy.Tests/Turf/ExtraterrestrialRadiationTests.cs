using GddWatch.Agronomy.Turf;
using Xunit;

namespace GddWatch.Agronomy.Tests.Turf;

public sealed class ExtraterrestrialRadiationTests
{
    [Theory]
    [InlineData(-20, 246, 32.1940)] // FAO-56 example 8, 3 September; printed 32.2 (SEEN), digits CALC
    [InlineData(50.80, 187, 41.0884)] // FAO-56 example 18, Uccle, 6 July (CALC)
    [InlineData(45.72, 196, 40.5546)] // FAO-56 example 20, Lyon, July (CALC)
    public void It_agrees_with_the_worked_examples_of_its_publication(double latitude, int day, double expectedMJ) =>
        Assert.Equal(expectedMJ, ExtraterrestrialRadiation.MJPerM2(latitude, day), 0.5001e-4);

    [Fact]
    public void The_poles_have_a_night_of_half_a_year_and_no_place_has_less_than_none()
    {
        Assert.Equal(0, ExtraterrestrialRadiation.MJPerM2(90, 355));
        Assert.Equal(0, ExtraterrestrialRadiation.MJPerM2(-90, 172));
        for (int latitude = -90; latitude <= 90; latitude += 5)
        {
            for (int day = 1; day <= 366; day++) Assert.InRange(ExtraterrestrialRadiation.MJPerM2(latitude, day), 0, 49);
        }
    }

    [Theory]
    [InlineData(90.1, 100, "latitude [°] was 90.1; allowed is -90 to 90.")]
    [InlineData(double.NaN, 100, "latitude [°] was NaN")]
    [InlineData(10, 367, "day of the year was 367; allowed is 1 to 366.")]
    [InlineData(10, 0, "day of the year was 0")]
    public void A_place_or_day_that_does_not_exist_is_refused_with_its_value(double latitude, int day, string says) =>
        Assert.Contains(says, Assert.Throws<ArgumentOutOfRangeException>(() => ExtraterrestrialRadiation.MJPerM2(latitude, day)).Message);
}
