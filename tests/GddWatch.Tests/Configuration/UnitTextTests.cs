using CsCheck;
using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Treatments.Conditions;
using GddWatch.Configuration.Scalars;
using Xunit;

namespace GddWatch.Tests.Configuration;

public sealed class UnitTextTests
{
    // Fixed points of the scales: 32 °F is 0 °C, 212 °F would be 100 °C, -40 is the same on both (common practice); 1 °C-day is 1.8 °F-days (CALC).
    [Theory]
    [InlineData("32 °F", 0)]
    [InlineData("50 °F", 10)]
    [InlineData("50°F", 10)]
    [InlineData("50 F", 10)]
    [InlineData("50 ° F", 10)]
    [InlineData("10 C", 10)]
    [InlineData("-40 °F", -40)]
    [InlineData("-40 °C", -40)]
    [InlineData("+12.5 °C", 12.5)]
    public void A_temperature_reads_the_same_in_either_unit(string text, double celsius) =>
        Assert.Equal(celsius, Assert.IsType<Temperature>(UnitText.Temperature(text).Value).Celsius, 12);

    [Theory]
    [InlineData("350 °F-days", 194.44444444444446)]
    [InlineData("350 F-days", 194.44444444444446)]
    [InlineData("350 °F days", 194.44444444444446)]
    [InlineData("78 °C-days", 78)]
    [InlineData("78 °C·days", 78)]
    [InlineData("1 °C-day", 1)]
    public void A_heat_sum_converts_without_the_offset_of_a_temperature(string text, double celsiusDays) =>
        Assert.Equal(celsiusDays, Assert.IsType<DegreeDays>(UnitText.Heat(text).Value).CelsiusDays, 12);

    // 1 in is 25.4 mm exactly (the international inch of 1959, common practice).
    [Theory]
    [InlineData("5 cm", 50)]
    [InlineData("2 in", 50.8)]
    [InlineData("1 inch", 25.4)]
    [InlineData("0.5 inches", 12.7)]
    [InlineData("25 mm", 25)]
    public void A_depth_reads_the_same_in_either_unit(string text, double millimetres) =>
        Assert.Equal(millimetres, Assert.IsType<Depth>(UnitText.Depth(text).Value).Millimetres, 12);

    [Theory]
    [InlineData("3 of 5 days", 3, 5)]
    [InlineData("3 days", 3, 3)]
    [InlineData("1 day", 1, 1)]
    public void A_holding_time_is_some_of_the_last_days_or_days_in_a_row(string text, int days, int ofDays) =>
        Assert.Equal(new Holding(days, ofDays), UnitText.Holding(text).Value);

    [Theory]
    [InlineData("1,5 cm")]
    [InlineData("1 000 mm")]
    [InlineData("5cm deep")]
    [InlineData("5 CM ")]
    [InlineData("٥ cm")]
    [InlineData("five cm")]
    [InlineData("1e1 cm")]
    [InlineData("NaN cm")]
    [InlineData("")]
    public void A_depth_that_two_people_could_read_differently_is_refused(string text) => Assert.Null(UnitText.Depth(text).Value);

    [Theory]
    [InlineData("3 of 5")]
    [InlineData("0 of 5 days")]
    [InlineData("99999999999 days")]
    [InlineData("٣ of ٥ days")]
    public void A_holding_time_that_cannot_be_is_refused(string text) => Assert.Null(UnitText.Holding(text).Value);

    [Theory]
    [InlineData("02-29", 2, 29)]
    [InlineData("12-31", 12, 31)]
    public void A_day_of_the_year_is_month_and_day(string text, int month, int day) => Assert.Equal(AnnualDay.Of(month, day), PlainText.AnnualDay(text).Value);

    [Theory]
    [InlineData("02-30")]
    [InlineData("13-01")]
    [InlineData("5-1")]
    [InlineData("05/01")]
    [InlineData("2026-05-01")]
    public void A_day_that_no_year_has_is_refused(string text) => Assert.Null(PlainText.AnnualDay(text).Value);

    [Fact]
    public void No_text_whatever_makes_a_reader_throw()
    {
        Type[] types = [typeof(string), typeof(double), typeof(bool), typeof(DateOnly), typeof(AnnualDay), typeof(Temperature), typeof(Depth), typeof(Elevation), typeof(DegreeDays), typeof(DayCount), typeof(Chance), typeof(Holding)];
        Gen<string> text = Gen.String[Gen.OneOf("0123456789.,-+ %°CFcmindaysoft\t\n\0١".ToCharArray()), 0, 12];
        Gen.Select(Gen.OneOf(types), Gen.OneOf(text, Gen.String)).Sample(
            (type, written) =>
            {
                ScalarReading reading = ScalarKinds.Of(type).Read(written);
                Assert.True(reading.Value is null ? reading.Problem is { Length: > 0 } : reading.Value.GetType() == type);
            },
            iter: 2000);
    }
}
