using GddWatch.Agronomy.Weather;
using GddWatch.Agronomy.Weather.Checks;
using MathNet.Numerics;
using Xunit;

namespace GddWatch.Agronomy.Tests.Weather.Checks;

public sealed class SlidingLineTests
{
    // Against the least squares of MathNet.Numerics over the same pairs: whatever is far from that line must be told so, and hardly more.
    [Fact]
    public void A_line_that_slides_lets_nothing_pass_that_is_far_from_a_fresh_one()
    {
        DateOnly first = new(2010, 1, 1);
        DailySeries series = RandomTemperatures.Series(first, 6000, seed: 3);
        DailySeries near = RandomTemperatures.Series(first, 6000, seed: 4, like: series);
        CheckedValues values = new(series);
        Neighbour neighbour = new(near, WeatherVariable.MinimumAirC, first);
        SlidingLine line = new(values, WeatherVariable.MinimumAirC, neighbour);
        (int far, int told, int judged) = (0, 0, 0);

        for (int today = SpatialRegressionCheck.WindowDays; today < series.Count; today++)
        {
            // A doubt that comes takes a value out of the days before.
            if (today % 97 == 0) values.Doubt(QualityCheck.Streak, WeatherVariable.MinimumAirC, today - 5, today, "for this test");
            double valueC = values.SeenBy(QualityCheck.SpatialRegression, WeatherVariable.MinimumAirC, today);
            double nearestC = neighbour.NearestTo(valueC, today, today);
            int[] days = [.. Enumerable.Range(today - SpatialRegressionCheck.WindowDays, SpatialRegressionCheck.WindowDays)
                .Where(i => !double.IsNaN(values.PassedBy(QualityCheck.SpatialRegression, WeatherVariable.MinimumAirC, i)) && !double.IsNaN(neighbour.At(i)))];
            if (double.IsNaN(valueC) || double.IsNaN(nearestC) || days.Length < SpatialRegressionCheck.LeastCommonDays) continue;
            (double intercept, double slope) = Fit.Line(
                [.. days.Select(neighbour.At)], [.. days.Select(i => values.PassedBy(QualityCheck.SpatialRegression, WeatherVariable.MinimumAirC, i))]);
            bool isFar = Math.Abs(valueC - intercept - (slope * nearestC)) >= SpatialRegressionCheck.LeastResidualC;

            line.AdvanceTo(today);
            bool mayBeFar = line.MayBeFar(valueC, nearestC);

            Assert.True(mayBeFar || !isFar, $"day {today}");
            judged++;
            if (isFar) far++;
            if (mayBeFar) told++;
        }

        Assert.True(judged > 1000 && far > 5, $"{judged} judged, {far} far");
        Assert.InRange(told, far, far + 5);
    }
}
