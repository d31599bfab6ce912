using System.Globalization;
using GddWatch.Agronomy.Heat;
using Xunit;

namespace GddWatch.Agronomy.Tests.Heat.Published;

/// <summary>Every value of the two reference files, which were made by numerical integration of each response over each curve (CALC).</summary>
public class ReferenceFileTests
{
    private const int FirstValueColumn = 7;

    private static readonly (string Words, DegreeDayMethod Method, DegreeDayCutoff Cutoff)[] Averages =
    [
        ("simple_average", DegreeDayMethod.SimpleAverage, DegreeDayCutoff.None),
        ("average_mean_reset_to_base_and_upper", DegreeDayMethod.SimpleAverage, DegreeDayCutoff.Horizontal),
        ("average_extremes_reset_to_base_only", DegreeDayMethod.AverageWithLimitedExtremes, DegreeDayCutoff.None),
        ("average_extremes_reset_to_base_and_upper", DegreeDayMethod.AverageWithLimitedExtremes, DegreeDayCutoff.Horizontal),
    ];

    private static readonly (string Words, DegreeDayMethod Method)[] Curves =
    [
        ("single_triangle", DegreeDayMethod.SingleTriangle),
        ("double_triangle", DegreeDayMethod.DoubleTriangle),
        ("single_sine", DegreeDayMethod.SingleSine),
        ("double_sine", DegreeDayMethod.DoubleSine),
    ];

    private static readonly (string Words, DegreeDayCutoff Cutoff)[] Cutoffs =
    [
        ("no_upper", DegreeDayCutoff.None),
        ("horizontal", DegreeDayCutoff.Horizontal),
        ("intermediate_day_floor", DegreeDayCutoff.Intermediate),
        ("intermediate_pointwise_floor", DegreeDayCutoff.IntermediatePointwise),
        ("vertical", DegreeDayCutoff.Vertical),
    ];

    [Theory]
    [InlineData("degree-day-reference.csv", "degC", 44)]
    [InlineData("degree-day-reference-f.csv", "degF", 14)]
    public void Every_value_of_the_reference_file_is_met_to_a_billionth(string file, string unit, int cases)
    {
        string[] lines = File.ReadAllLines(SharedFiles.Find(file));
        string[] head = Cells(lines[0]);
        (DegreeDayMethod Method, DegreeDayCutoff Cutoff)[] columns = [.. head[FirstValueColumn..^1].Select(name => Meaning(name, unit))];
        Assert.Equal(24, columns.Distinct().Count());
        Assert.Equal(cases, lines.Length - 1);
        foreach (string line in lines[1..])
        {
            string[] cells = Cells(line);
            double[] given = [.. cells[2..FirstValueColumn].Select(Number)];
            for (int i = 0; i < columns.Length; i++)
            {
                double expected = Number(cells[FirstValueColumn + i]);
                (DegreeDayMethod method, DegreeDayCutoff cutoff) = columns[i];
                double scalar = DailyHeat.DegreeDays(method, cutoff, given[0], given[1], given[2], given[3], given[4]);
                Assert.True(Math.Abs(scalar - expected) <= 1e-9, $"{cells[0]} {head[FirstValueColumn + i]}: {scalar:R} instead of {expected:R}.");
                double inColumn = FirstOfColumn(method, cutoff, given);
                Assert.True(Math.Abs(inColumn - expected) <= 1e-9, $"{cells[0]} {head[FirstValueColumn + i]} in a column: {inColumn:R} instead of {expected:R}.");
            }
        }
    }

    private static double FirstOfColumn(DegreeDayMethod method, DegreeDayCutoff cutoff, double[] given)
    {
        Span<double> sums = stackalloc double[2];
        HeatSum.Accumulate(method, cutoff, [given[0], given[2]], [given[1], given[2]], given[3], given[4], [0], sums);
        return sums[0];
    }

    private static (DegreeDayMethod Method, DegreeDayCutoff Cutoff) Meaning(string column, string unit)
    {
        string words = column.Replace($"_{unit}_day", "", StringComparison.Ordinal);
        foreach ((string average, DegreeDayMethod method, DegreeDayCutoff cutoff) in Averages)
        {
            if (words == average) return (method, cutoff);
        }

        (string curveWords, DegreeDayMethod curve) = Curves.Single(c => words.StartsWith(c.Words, StringComparison.Ordinal));
        return (curve, Cutoffs.Single(c => words == $"{curveWords}_{c.Words}").Cutoff);
    }

    private static double Number(string text) => double.Parse(text, CultureInfo.InvariantCulture);

    /// <summary>The cells of a line; only the words of a case are quoted, to hold commas.</summary>
    private static string[] Cells(string line)
    {
        string[] parts = line.Split('"');
        return parts.Length == 1 ? line.Split(',') : [.. parts[0].TrimEnd(',').Split(','), parts[1], .. parts[2].TrimStart(',').Split(',')];
    }
}
