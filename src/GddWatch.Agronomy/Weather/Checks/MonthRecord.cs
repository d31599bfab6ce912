namespace GddWatch.Agronomy.Weather.Checks;

/// <summary>The values of one calendar month over earlier years.</summary>
internal sealed class MonthRecord
{
    /// <summary>All values, from cold to warm [°C].</summary>
    public List<double> SortedC { get; private set; } = [];

    /// <summary>How many years know at least half of the month [years].</summary>
    public int Years { get; private set; }

    public double LowestC => SortedC[0];

    public double HighestC => SortedC[^1];

    /// <summary>Adds the values of one year.</summary>
    public void Join(List<double> knownC, bool counts)
    {
        if (counts) Years++;
        knownC.Sort();
        List<double> merged = new(SortedC.Count + knownC.Count);
        int next = 0;
        foreach (double valueC in SortedC)
        {
            while (next < knownC.Count && knownC[next] < valueC) merged.Add(knownC[next++]);
            merged.Add(valueC);
        }

        while (next < knownC.Count) merged.Add(knownC[next++]);
        SortedC = merged;
    }
}
