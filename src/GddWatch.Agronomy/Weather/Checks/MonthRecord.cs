namespace GddWatch.Agronomy.Weather.Checks;

/// <summary>The values of one calendar month over earlier years.</summary>
internal sealed class MonthRecord
{
    private readonly List<double> valuesC = [];

    // Whether no gap lies between the lowest and the highest value: once so, values that lie no gap away leave it so, and nothing need be sorted.
    private bool isWithoutGap;

    /// <summary>How many values there are [values].</summary>
    public int Count => valuesC.Count;

    /// <summary>How many years know at least half of the month [years].</summary>
    public int Years { get; private set; }

    public double LowestC { get; private set; } = double.PositiveInfinity;

    public double HighestC { get; private set; } = double.NegativeInfinity;

    /// <summary>The same values, to which others may join.</summary>
    public MonthRecord Copy()
    {
        var copy = new MonthRecord { isWithoutGap = isWithoutGap, Years = Years, LowestC = LowestC, HighestC = HighestC };
        copy.valuesC.AddRange(valuesC);
        return copy;
    }

    /// <summary>Adds the values of one year.</summary>
    public void Join(List<double> knownC, bool counts)
    {
        if (counts) Years++;
        (double lowestC, double highestC) = (LowestC, HighestC);
        foreach (double valueC in knownC)
        {
            isWithoutGap &= !GapCheck.IsGap(LowestC - valueC) && !GapCheck.IsGap(valueC - HighestC);
            lowestC = Math.Min(lowestC, valueC);
            highestC = Math.Max(highestC, valueC);
        }

        (LowestC, HighestC) = (lowestC, highestC);
        valuesC.AddRange(knownC);
    }

    /// <summary>The lowest and the highest value that no gap parts from the median [°C]; there must be a value.</summary>
    public (double LowestC, double HighestC) RangeAroundMedian()
    {
        if (isWithoutGap) return (LowestC, HighestC);
        valuesC.Sort();
        int high = valuesC.Count / 2;
        int low = (valuesC.Count - 1) / 2;
        while (high + 1 < valuesC.Count && !GapCheck.IsGap(valuesC[high + 1] - valuesC[high])) high++;
        while (low > 0 && !GapCheck.IsGap(valuesC[low] - valuesC[low - 1])) low--;
        isWithoutGap = low == 0 && high == valuesC.Count - 1;
        return (valuesC[low], valuesC[high]);
    }
}
