namespace GddWatch.Agronomy.Weather.Checks;

/// <summary>Medians of sorted values.</summary>
internal static class Middle
{
    /// <summary>The median of values from the least to the greatest.</summary>
    public static double OfSorted(ReadOnlySpan<double> sorted)
    {
        int half = sorted.Length / 2;
        return sorted.Length % 2 == 1 ? sorted[half] : (sorted[half - 1] + sorted[half]) / 2;
    }

    /// <summary>The median of the distances of sorted values from a point, found by bisection: the distances to either side are sorted themselves.</summary>
    public static double OfDistances(ReadOnlySpan<double> sorted, double point)
    {
        int below = sorted.BinarySearch(point);
        if (below < 0) below = ~below;
        int half = sorted.Length / 2;
        double upper = Nearest(sorted, point, below, half);
        return sorted.Length % 2 == 1 ? upper : (Nearest(sorted, point, below, half - 1) + upper) / 2;
    }

    // The distance that has so many before it, with so many values on the left of the point.
    private static double Nearest(ReadOnlySpan<double> sorted, double point, int below, int place)
    {
        int taken = place + 1;
        int low = Math.Max(0, taken - (sorted.Length - below));
        int high = Math.Min(below, taken);
        // The fewest from the left so that the next one there is no nearer than the last one taken from the right.
        while (low < high)
        {
            int fromLeft = (low + high) / 2;
            if (point - sorted[below - 1 - fromLeft] < sorted[below + taken - fromLeft - 1] - point) low = fromLeft + 1;
            else high = fromLeft;
        }

        double left = low > 0 ? point - sorted[below - low] : double.NegativeInfinity;
        double right = taken > low ? sorted[below + taken - low - 1] - point : double.NegativeInfinity;
        return Math.Max(left, right);
    }
}
