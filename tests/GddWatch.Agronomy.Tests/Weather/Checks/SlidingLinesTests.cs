using GddWatch.Agronomy.Weather;
using GddWatch.Agronomy.Weather.Checks;
using MathNet.Numerics;
using Xunit;

namespace GddWatch.Agronomy.Tests.Weather.Checks;

public sealed class SlidingLinesTests
{
    // Against the least squares of MathNet.Numerics over the same pairs: whatever is far from that line must be told so, and hardly more.
    [Theory]
    [InlineData(1)]
    [InlineData(3)]
    [InlineData(9)]
    public void Lines_that_slide_let_nothing_pass_that_is_far_from_a_fresh_one(int count)
    {
        DateOnly first = new(2010, 1, 1);
        DailySeries series = RandomTemperatures.Series(first, 6000, seed: 3);
        CheckedValues values = new(series);
        Neighbour[] neighbours = [.. Enumerable.Range(0, count).Select(i => new Neighbour(RandomTemperatures.Series(first, 6000, seed: 4 + i, like: series), WeatherVariable.MinimumAirC, first))];
        SlidingLines lines = new(values, WeatherVariable.MinimumAirC, neighbours);
        (int far, int told, int judged) = (0, 0, 0);

        for (int today = SpatialRegressionCheck.WindowDays; today < series.Count; today++)
        {
            // A doubt that comes takes a value out of the days before.
            if (today % 97 == 0) values.Doubt(QualityCheck.Streak, WeatherVariable.MinimumAirC, today - 5, today, "for this test");
            double valueC = values.SeenBy(QualityCheck.SpatialRegression, WeatherVariable.MinimumAirC, today);
            if (double.IsNaN(valueC)) continue;
            bool isFar = neighbours.Any(neighbour => IsFar(values, neighbour, valueC, today));
            bool mayBeFar = lines.MayBeFar(valueC, today);

            Assert.True(mayBeFar || !isFar, $"day {today}");
            judged++;
            if (isFar) far++;
            if (mayBeFar) told++;
        }

        Assert.True(judged > 1000 && far > 5, $"{judged} judged, {far} far");
        Assert.InRange(told, far, far + 5);
    }

    private static bool IsFar(CheckedValues values, Neighbour neighbour, double valueC, int today)
    {
        double nearestC = neighbour.NearestTo(valueC, today, today);
        int[] days = [.. Enumerable.Range(today - SpatialRegressionCheck.WindowDays, SpatialRegressionCheck.WindowDays)
            .Where(i => !double.IsNaN(values.PassedBy(QualityCheck.SpatialRegression, WeatherVariable.MinimumAirC, i)) && !double.IsNaN(neighbour.At(i)))];
        if (double.IsNaN(nearestC) || days.Length < SpatialRegressionCheck.LeastCommonDays) return false;
        (double intercept, double slope) = Fit.Line(
            [.. days.Select(neighbour.At)], [.. days.Select(i => values.PassedBy(QualityCheck.SpatialRegression, WeatherVariable.MinimumAirC, i))]);
        return Math.Abs(valueC - intercept - (slope * nearestC)) >= SpatialRegressionCheck.LeastResidualC;
    }
}
