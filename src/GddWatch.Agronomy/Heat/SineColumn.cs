using System.Numerics;
using System.Runtime.CompilerServices;

namespace GddWatch.Agronomy.Heat;

/// <summary>
/// <see cref="SineCurve"/> under <see cref="CutoffRule"/> for several days at once: the arccosine bounds a heat sum otherwise. Every day goes through the same
/// arithmetic wherever it stands in the column, so that cutting a column changes no day before the cut by a bit.
/// </summary>
internal static class SineColumn
{
    /// <summary>As <see cref="DailyHeatColumn.Fill"/>, by the single or the double sine.</summary>
    public static int Fill(
        bool doubled,
        DegreeDayCutoff cutoff,
        ReadOnlySpan<double> minimumC,
        ReadOnlySpan<double> maximumC,
        double baseC,
        double upperC,
        Span<double> heat)
    {
        if (double.IsPositiveInfinity(upperC)) cutoff = DegreeDayCutoff.None;
        int ahead = doubled ? 1 : 0;
        int i = 0;
        for (; i + Vector<double>.Count + ahead <= heat.Length; i += Vector<double>.Count)
        {
            Vector<double> minimum = new(minimumC[i..]);
            Vector<double> maximum = new(maximumC[i..]);
            Vector<double> next = doubled ? new(minimumC[(i + 1)..]) : minimum;
            if (AnyImpossible(minimum, maximum)) return FirstImpossible(minimumC, maximumC, i);
            Days(doubled, cutoff, minimum, maximum, next, baseC, upperC).CopyTo(heat[i..]);
        }

        return i == heat.Length ? -1 : FillRest(doubled, cutoff, minimumC, maximumC, baseC, upperC, heat, i);
    }

    /// <summary>The days that do not fill a vector, beside days at zero that are thrown away.</summary>
    private static int FillRest(
        bool doubled,
        DegreeDayCutoff cutoff,
        ReadOnlySpan<double> minimumC,
        ReadOnlySpan<double> maximumC,
        double baseC,
        double upperC,
        Span<double> heat,
        int from)
    {
        int rest = heat.Length - from;
        Span<double> lanes = stackalloc double[3 * Vector<double>.Count];
        lanes.Clear();
        Span<double> minimum = lanes[..Vector<double>.Count];
        Span<double> maximum = lanes.Slice(Vector<double>.Count, Vector<double>.Count);
        Span<double> next = lanes[(2 * Vector<double>.Count)..];
        minimumC[from..].CopyTo(minimum);
        maximumC[from..].CopyTo(maximum);
        minimumC[(from + 1)..].CopyTo(next);
        next[rest - 1] = minimum[rest - 1];
        if (AnyImpossible(new(minimum), new(maximum))) return FirstImpossible(minimumC, maximumC, from);
        Days(doubled, cutoff, new(minimum), new(maximum), new(next), baseC, upperC).CopyTo(lanes);
        lanes[..rest].CopyTo(heat[from..]);
        return -1;
    }

    private static Vector<double> Days(
        bool doubled, DegreeDayCutoff cutoff, Vector<double> minimum, Vector<double> maximum, Vector<double> next, double baseC, double upperC)
    {
        Vector<double> heat = Curve(cutoff, minimum, maximum, baseC, upperC);
        if (doubled)
        {
            next = Vector.ConditionalSelect(Vector.LessThanOrEqual(Vector.Abs(next), Vector.Create(double.MaxValue)), next, minimum);
            Vector<double> second = Curve(cutoff, Vector.Min(next, maximum), Vector.Max(next, maximum), baseC, upperC);
            heat = (heat + second) * Vector.Create(0.5);
        }

        Vector<long> known = Vector.Equals(minimum, minimum) & Vector.Equals(maximum, maximum);
        return Vector.ConditionalSelect(known, heat, Vector.Create(double.NaN));
    }

    private static Vector<double> Curve(DegreeDayCutoff cutoff, Vector<double> minimum, Vector<double> maximum, double baseC, double upperC)
    {
        Vector<double> heat = MeanAbove(baseC, minimum, maximum);
        if (cutoff == DegreeDayCutoff.None || Vector.LessThanOrEqualAll(maximum, Vector.Create(upperC))) return heat;
        Vector<double> overUpper = MeanAbove(upperC, minimum, maximum);
        heat = cutoff switch
        {
            DegreeDayCutoff.Horizontal => heat - overUpper,
            DegreeDayCutoff.Intermediate => heat - (overUpper + overUpper),
            DegreeDayCutoff.IntermediatePointwise => heat - (overUpper + overUpper) + MeanAbove(2.0 * upperC - baseC, minimum, maximum),
            DegreeDayCutoff.Vertical => heat - overUpper - Vector.Create(upperC - baseC) * FractionAbove(upperC, minimum, maximum),
            _ => throw HeatDemand.Unknown(cutoff),
        };
        return Vector.Max(heat, Vector<double>.Zero);
    }

    private static Vector<double> MeanAbove(double thresholdC, Vector<double> minimum, Vector<double> maximum)
    {
        Vector<double> threshold = Vector.Create(thresholdC);
        Vector<double> half = Vector.Create(0.5);
        Vector<long> wholeDay = Vector.LessThanOrEqual(threshold, minimum);
        Vector<long> noTime = Vector.GreaterThanOrEqual(threshold, maximum);
        Vector<double> middle = (minimum + maximum) * half;
        Vector<double> plain = Vector.ConditionalSelect(noTime, Vector<double>.Zero, middle - threshold);

        // Most days of a year lie wholly on one side and need no curve.
        if (Vector.EqualsAll(wholeDay | noTime, Vector<long>.AllBitsSet)) return plain;
        Vector<double> halfRange = (maximum - minimum) * half;
        Vector<double> x = Place(threshold, middle, halfRange);
        Vector<double> root = Vector.SquareRoot((Vector<double>.One - x) * (Vector<double>.One + x));
        Vector<double> curved = halfRange * (root - x * ArcCosine.Of(x)) * Vector.Create(1.0 / Math.PI);
        return Vector.ConditionalSelect(wholeDay | noTime, plain, curved);
    }

    private static Vector<double> FractionAbove(double thresholdC, Vector<double> minimum, Vector<double> maximum)
    {
        Vector<double> threshold = Vector.Create(thresholdC);
        Vector<double> half = Vector.Create(0.5);
        Vector<double> x = Place(threshold, (minimum + maximum) * half, (maximum - minimum) * half);
        Vector<double> curved = ArcCosine.Of(x) * Vector.Create(1.0 / Math.PI);
        Vector<double> below = Vector.ConditionalSelect(Vector.LessThanOrEqual(threshold, minimum), Vector<double>.One, curved);
        return Vector.ConditionalSelect(Vector.GreaterThanOrEqual(threshold, maximum), Vector<double>.Zero, below);
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static Vector<double> Place(Vector<double> threshold, Vector<double> middle, Vector<double> halfRange) =>
        Vector.Min(Vector.Max((threshold - middle) / halfRange, -Vector<double>.One), Vector<double>.One);

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private static bool AnyImpossible(Vector<double> minimum, Vector<double> maximum)
    {
        Vector<double> largest = Vector.Create(double.MaxValue);
        return Vector.GreaterThanAny(minimum, maximum)
            || Vector.GreaterThanAny(Vector.Abs(minimum), largest)
            || Vector.GreaterThanAny(Vector.Abs(maximum), largest);
    }

    private static int FirstImpossible(ReadOnlySpan<double> minimumC, ReadOnlySpan<double> maximumC, int from)
    {
        while (!HeatDemand.Impossible(minimumC[from], maximumC[from])) from++;
        return from;
    }
}
