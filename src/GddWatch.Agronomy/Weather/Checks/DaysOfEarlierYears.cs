namespace GddWatch.Agronomy.Weather.Checks;

/// <summary>
/// What one variable was in earlier years within some days of a place in the year. Counts, means and deviations are kept as sums over the year, so that asking for those of any place
/// costs the same; the values themselves are gathered as of any number of years.
/// </summary>
internal sealed class DaysOfEarlierYears
{
    private readonly int halfDays;
    private readonly List<double[]> years = [];
    private readonly int[] known = new int[EarlierYears.DaysOfAYear];
    private readonly double[] sums = new double[EarlierYears.DaysOfAYear];
    private readonly double[] squares = new double[EarlierYears.DaysOfAYear];

    // Each up to a place, beginning so many days before the year and ending as many after it.
    private readonly int[] knownBefore;
    private readonly double[] sumsBefore;
    private readonly double[] squaresBefore;

    public DaysOfEarlierYears(int halfDays)
    {
        this.halfDays = halfDays;
        int places = EarlierYears.DaysOfAYear + (2 * halfDays) + 1;
        (knownBefore, sumsBefore, squaresBefore) = (new int[places], new double[places], new double[places]);
    }

    /// <summary>The same years, to which others may join.</summary>
    public DaysOfEarlierYears Copy()
    {
        var copy = new DaysOfEarlierYears(halfDays);
        copy.years.AddRange(years);
        known.CopyTo(copy.known, 0);
        sums.CopyTo(copy.sums, 0);
        squares.CopyTo(copy.squares, 0);
        knownBefore.CopyTo(copy.knownBefore, 0);
        sumsBefore.CopyTo(copy.sumsBefore, 0);
        squaresBefore.CopyTo(copy.squaresBefore, 0);
        return copy;
    }

    /// <summary>How many years have joined [years].</summary>
    public int Years => years.Count;

    /// <summary>Adds a year: a value a place, NaN where it is not known [°C]. The values must not change later.</summary>
    public void Join(double[] yearC)
    {
        years.Add(yearC);
        for (int place = 0; place < yearC.Length; place++)
        {
            if (double.IsNaN(yearC[place])) continue;
            known[place]++;
            sums[place] += yearC[place];
            squares[place] += yearC[place] * yearC[place];
        }

        for (int i = 0; i + 1 < knownBefore.Length; i++)
        {
            int place = Around(i - halfDays);
            knownBefore[i + 1] = knownBefore[i] + known[place];
            sumsBefore[i + 1] = sumsBefore[i] + sums[place];
            squaresBefore[i + 1] = squaresBefore[i] + squares[place];
        }
    }

    /// <summary>How many values are known about a place [values].</summary>
    public int Count(int place) => knownBefore[place + (2 * halfDays) + 1] - knownBefore[place];

    /// <summary>How many years know the day about a place that most of them know [years].</summary>
    public int MostYears(int place)
    {
        int most = 0;
        for (int i = place - halfDays; i <= place + halfDays; i++) most = Math.Max(most, known[Around(i)]);
        return most;
    }

    /// <summary>The ordinary mean and the root of the mean square departure from it of all values about a place [°C], but for the rounding of long sums (some 1e-8 °C); NaN where there are none.</summary>
    public (double MeanC, double DeviationC) Moments(int place)
    {
        int end = place + (2 * halfDays) + 1;
        int count = Count(place);
        double mean = (sumsBefore[end] - sumsBefore[place]) / count;
        return (mean, Math.Sqrt(Math.Max(0, ((squaresBefore[end] - squaresBefore[place]) / count) - (mean * mean))));
    }

    /// <summary>The values about a place in the first years that joined, in the order of the years [°C].</summary>
    public double[] Gather(int place, int firstYears)
    {
        List<double> valuesC = new(firstYears * ((2 * halfDays) + 1));
        foreach (double[] year in years.Take(firstYears))
        {
            for (int i = place - halfDays; i <= place + halfDays; i++)
            {
                if (!double.IsNaN(year[Around(i)])) valuesC.Add(year[Around(i)]);
            }
        }

        return [.. valuesC];
    }

    // The place goes around the year's ends.
    private static int Around(int place) => place < 0 ? place + EarlierYears.DaysOfAYear : place >= EarlierYears.DaysOfAYear ? place - EarlierYears.DaysOfAYear : place;
}
