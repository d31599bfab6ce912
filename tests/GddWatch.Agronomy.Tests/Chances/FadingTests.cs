using GddWatch.Agronomy.Chances;
using Xunit;

namespace GddWatch.Agronomy.Tests.Chances;

public sealed class FadingTests
{
    private static readonly int[] Starts = [.. Enumerable.Range(46, 15)];

    [Fact]
    public void Without_any_year_it_is_as_usual()
    {
        Fading fading = Fading.Measure([], Starts, 3, Fading.UsualSoil);
        Assert.Equal(Fading.UsualSoil.FastDays, fading.FastDays, 6);
        Assert.Equal(Fading.UsualSoil.SlowDays, fading.SlowDays, 6);
        Assert.Equal(Fading.UsualSoil.SlowShare, fading.SlowShare, 6);
    }

    [Theory]
    [InlineData(0.5)]
    [InlineData(0.8)]
    [InlineData(0.9)]
    public void A_long_record_shows_the_persistence_with_which_it_was_made(double correlation)
    {
        // A first-order autoregression has the lag correlation r^h: e-folding after −1/ln r days (textbook). Of 400 years the usual fading weighs 4 %.
        Fading fading = Fading.Measure(Years(400, correlation), Starts, 3, Fading.UsualSoil);
        double expected = Math.Pow(correlation, 3);
        Assert.InRange(fading.FastLeft(3), expected - 0.08, expected + 0.08);
    }

    [Fact]
    public void A_short_record_is_drawn_towards_the_usual_fading()
    {
        double few = Fading.Measure(Years(5, 0.2), Starts, 3, Fading.UsualSoil).FastLeft(3);
        double many = Fading.Measure(Years(400, 0.2), Starts, 3, Fading.UsualSoil).FastLeft(3);
        Assert.InRange(few, many, Fading.UsualSoil.FastLeft(3));
    }

    private static double[][] Years(int count, double correlation)
    {
        var draws = new SeededDraws(42);
        var years = new double[count][];
        for (int i = 0; i < count; i++)
        {
            double[] scores = draws.NormalScores(100);
            var year = new double[100];
            for (int day = 1; day < year.Length; day++) year[day] = correlation * year[day - 1] + Math.Sqrt(1 - correlation * correlation) * scores[day];
            years[i] = year;
        }

        return years;
    }
}
