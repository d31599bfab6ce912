namespace GddWatch.Agronomy.Weather.Checks;

/// <summary>The median by selection, in linear time: a long record asks for it some ten thousand times.</summary>
internal static class Middle
{
    /// <summary>The median; puts the values into another order. NaN where one of them is NaN.</summary>
    public static double Of(Span<double> values)
    {
        foreach (double value in values)
        {
            if (double.IsNaN(value)) return double.NaN;
        }

        int half = values.Length / 2;
        double upper = Select(values, half);
        if (values.Length % 2 == 1) return upper;
        double lower = double.NegativeInfinity;
        foreach (double value in values[..half]) lower = Math.Max(lower, value);
        return (lower + upper) / 2;
    }

    // Hoare's selection: afterwards no value before the place is greater, none behind it smaller.
    private static double Select(Span<double> values, int place)
    {
        int low = 0;
        int high = values.Length - 1;
        while (low < high)
        {
            double pivot = values[(low + high) / 2];
            int i = low;
            int j = high;
            while (i <= j)
            {
                while (values[i] < pivot) i++;
                while (values[j] > pivot) j--;
                if (i > j) break;
                (values[i], values[j]) = (values[j], values[i]);
                i++;
                j--;
            }

            if (j < place) low = i;
            if (i > place) high = j;
        }

        return values[place];
    }
}
