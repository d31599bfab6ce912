using CsCheck;
using GddWatch.Agronomy.Weather.Checks;
using Xunit;

namespace GddWatch.Agronomy.Tests.Weather.Checks;

public sealed class BiweightTests
{
    // Worked example of the formula of Lanzante 1996 (CALC): six ordinary values and a wild one, whose ordinary mean is 13.5 and standard deviation 7.312.
    [Fact]
    public void A_wild_value_moves_neither_mean_nor_deviation()
    {
        (double mean, double deviation) = Biweight.Of([10.1, 11.2, 9.8, 10.5, 12.0, 10.9, 30.0]);

        Assert.Equal(10.750524, mean, 6);
        Assert.Equal(0.832445, deviation, 6);
    }

    // CALC: more than half of the values are equal, so that the median distance is 0: mean 16/5, sample standard deviation √7.2.
    [Fact]
    public void Where_most_values_are_equal_the_ordinary_ones_are_given()
    {
        (double mean, double deviation) = Biweight.Of([2, 2, 2, 2, 8]);

        Assert.Equal(3.2, mean, 12);
        Assert.Equal(Math.Sqrt(7.2), deviation, 12);
    }

    // The formula as it is written, with medians from sorting (CALC), against the way that a long record takes; temperatures in tenths, so that many are equal.
    [Fact]
    public void The_quick_way_gives_what_the_formula_says() =>
        Gen.Int[-400, 400].Array[2, 80].Sample(tenths =>
        {
            double[] values = [.. tenths.Select(value => value / 10.0)];
            (double mean, double deviation) = Biweight.Of(values);
            (double plainMean, double plainDeviation) = ByTheFormula(values);
            return Math.Abs(mean - plainMean) <= 1e-9 && (Math.Abs(deviation - plainDeviation) <= 1e-9 * Math.Max(1, plainDeviation) || deviation.Equals(plainDeviation));
        });

    [Fact]
    public void One_value_is_refused() => Assert.Throws<ArgumentException>(() => Biweight.Of([1.0]));

    private static (double Mean, double Deviation) ByTheFormula(double[] values)
    {
        double median = Median(values);
        double spread = 7.5 * Median([.. values.Select(value => Math.Abs(value - median))]);
        double average = values.Average();
        if (spread == 0) return (average, Math.Sqrt(values.Sum(value => (value - average) * (value - average)) / (values.Length - 1)));
        (double Distance, double U)[] inside = [.. values.Select(value => (value - median, (value - median) / spread)).Where(each => Math.Abs(each.Item2) < 1)];
        double weights = inside.Sum(each => Math.Pow(1 - (each.U * each.U), 2));
        double mean = median + (inside.Sum(each => each.Distance * Math.Pow(1 - (each.U * each.U), 2)) / weights);
        double squares = inside.Sum(each => each.Distance * each.Distance * Math.Pow(1 - (each.U * each.U), 4));
        double slope = inside.Sum(each => (1 - (each.U * each.U)) * (1 - (5 * each.U * each.U)));
        return (mean, Math.Sqrt(values.Length * squares) / Math.Abs(slope));
    }

    private static double Median(double[] values)
    {
        double[] sorted = [.. values.Order()];
        return (sorted[(sorted.Length - 1) / 2] + sorted[sorted.Length / 2]) / 2;
    }
}
