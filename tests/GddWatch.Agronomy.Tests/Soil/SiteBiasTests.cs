using CsCheck;
using GddWatch.Agronomy.Soil;
using Xunit;

namespace GddWatch.Agronomy.Tests.Soil;

public sealed class SiteBiasTests
{
    private const double SixDigits = 0.5001e-6;
    private const double ReadingVariance = 0.74;

    /// <summary>The constants of the worked numbers of science reference 2.9, not the product's.</summary>
    private static readonly ProbeConstants Worked = new() { BiasDeviationC = 1.5, MemoryDays = 30 };

    [Fact]
    public void Two_readings_ten_days_apart_go_as_in_the_worked_numbers() // science reference 2.9 (CALC)
    {
        SiteBias first = SiteBias.Unknown(Worked).With(2.0, ReadingVariance, 1, Worked, out double deviations);
        Assert.Equal(1.505017, first.MeanC, SixDigits);
        Assert.Equal(0.556856, first.Variance, SixDigits);
        Assert.Equal(2.0 / Math.Sqrt(2.25 + ReadingVariance), deviations, 1e-12);
        SiteBias later = first.After(10, Worked);
        Assert.Equal(1.078392, later.MeanC, SixDigits);
        Assert.Equal(1.380711, later.Variance, SixDigits);
        SiteBias second = later.With(1.0, ReadingVariance, 1, Worked, out _);
        Assert.Equal(1.027354, second.MeanC, SixDigits);
        Assert.Equal(0.481785, second.Variance, SixDigits);
    }

    [Theory]
    [InlineData(1, 0.753)]
    [InlineData(2, 0.859)]
    [InlineData(3, 0.901)]
    [InlineData(5, 0.938)]
    public void So_much_of_a_constant_bias_is_removed_by_readings_at_once(int readings, double share) // science reference 2.9 (CALC)
    {
        SiteBias bias = SiteBias.Unknown(Worked);
        for (int i = 0; i < readings; i++) bias = bias.With(1.0, ReadingVariance, 1, Worked, out _);
        Assert.Equal(share, bias.MeanC, 0.5001e-3);
    }

    [Fact]
    public void What_is_no_number_or_runs_backwards_is_refused_with_its_value()
    {
        var constants = new ProbeConstants();
        SiteBias unknown = SiteBias.Unknown(constants);
        Says("departure of the reading [°C] was NaN", () => unknown.With(double.NaN, 0.75, 1, constants, out _));
        Says("variance of the reading [°C²] was -0.5", () => unknown.With(1, -0.5, 1, constants, out _));
        Says("correlation was 1.5; allowed is 0 to 1.", () => unknown.With(1, 0.75, 1.5, constants, out _));
        Says("correlation was NaN", () => unknown.Carried(double.NaN, constants));
        Says("time since [days] was -1", () => unknown.After(-1, constants));

        static void Says(string text, Func<SiteBias> act) => Assert.Contains(text, Assert.Throws<ArgumentOutOfRangeException>(() => act()).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_later_day_equals_many_single_days() =>
        Gen.Select(Gen.Double[-5, 5], Gen.Double[0.01, 1.44], Gen.Int[0, 400]).Sample((mean, variance, days) =>
        {
            var constants = new ProbeConstants();
            var start = new SiteBias(mean, variance);
            SiteBias atOnce = start.After(days, constants);
            SiteBias daily = start;
            for (int i = 0; i < days; i++) daily = daily.After(1, constants);
            Assert.Equal(atOnce.MeanC, daily.MeanC, 1e-9);
            Assert.Equal(atOnce.Variance, daily.Variance, 1e-9);
        });

    [Fact]
    public void What_is_known_fades_with_time_and_depth_and_never_below_nothing_known() =>
        Gen.Select(Gen.Double[-5, 5], Gen.Double[0.01, 1.44], Gen.Double[0.1, 500], Gen.Double[0, 1]).Sample((mean, variance, days, correlation) =>
        {
            var constants = new ProbeConstants();
            var bias = new SiteBias(mean, variance);
            foreach (SiteBias faded in (SiteBias[])[bias.After(days, constants), bias.Carried(correlation, constants)])
            {
                Assert.True(Math.Abs(faded.MeanC) <= Math.Abs(mean));
                Assert.InRange(faded.Variance, variance - 1e-12, 1.44 + 1e-12);
            }
        });

    [Fact]
    public void A_reading_never_makes_the_bias_less_certain_and_one_elsewhere_says_no_more_than_its_depth_can() =>
        Gen.Select(Gen.Double[-4, 4].Array[1, 40], Gen.Double[0.3, 1]).Sample((departures, correlation) =>
        {
            var constants = new ProbeConstants();
            SiteBias bias = SiteBias.Unknown(constants);
            foreach (double departure in departures)
            {
                SiteBias next = bias.With(departure, 0.75, correlation, constants, out _);
                Assert.True(next.Variance <= bias.Variance);
                bias = next;
            }

            Assert.True(bias.Variance >= (1 - correlation * correlation) * 1.44 - 1e-12);
        });

    [Fact]
    public void A_doubted_reading_pulls_no_more_the_farther_off_it_is_and_makes_nothing_more_certain()
    {
        var constants = new ProbeConstants();
        SiteBias far = SiteBias.Unknown(constants).With(8, 0.75, 1, constants, out double deviations);
        SiteBias farther = SiteBias.Unknown(constants).With(30, 0.75, 1, constants, out _);
        SiteBias trusted = SiteBias.Unknown(constants).With(4.4, 0.75, 1, constants, out double fewer);
        Assert.True(deviations > 3 && fewer < 3);
        Assert.True(farther.MeanC < far.MeanC && far.MeanC < trusted.MeanC);
        Assert.Equal(SiteBias.Unknown(constants).Variance, far.Variance);
        Assert.Equal(far.Variance, farther.Variance);
        Assert.True(trusted.Variance < far.Variance);
    }
}
