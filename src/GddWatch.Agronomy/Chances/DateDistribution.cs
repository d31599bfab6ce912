namespace GddWatch.Agronomy.Chances;

/// <summary>
/// How likely something is to have come by which day: the dates on which it comes in several futures of equal weight, each date that lies beyond the forecast spread a little over the days beside it.
/// <para>Spread: normal, standard deviation b times that of the dates beyond the forecast; so futures that agree stay certain.
/// Source: dressing of an ensemble with kernels, Roulston &amp; Smith 2003, Tellus A 55:16-30 (MEMORY).</para>
/// <para>Places are days after the day on which it is said: 0 is that day itself.</para>
/// </summary>
public sealed class DateDistribution
{
    private readonly double[] cumulative;

    private DateDistribution(double[] cumulative, int futures, double withinFutures)
    {
        this.cumulative = cumulative;
        Futures = futures;
        MeanGapWithinFutures = withinFutures;
    }

    /// <summary>How many futures it is made of.</summary>
    public int Futures { get; }

    /// <summary>The mean distance of two dates drawn from the same future [days]: what the spreading alone makes of it.</summary>
    public double MeanGapWithinFutures { get; }

    /// <summary>The last place: the season's last day [days].</summary>
    public int LastPlace => cumulative.Length - 1;

    /// <summary>The chance that it does not come by the last place.</summary>
    public double Never => 1 - cumulative[^1];

    /// <summary>The chance that it has come by a place; from the last place on that of the last.</summary>
    public double By(int place) => place < 0 ? 0 : cumulative[Math.Min(place, LastPlace)];

    /// <summary>The distribution of some futures.</summary>
    /// <param name="dates">The place in each future; null where it does not come.</param>
    /// <param name="lastPlace">The season's last place [days].</param>
    /// <param name="certainUntil">The last place that the forecast reaches: dates up to it are not spread, and none beyond is spread into them.</param>
    /// <param name="spread">b, the share of the dates' standard deviation; 0 spreads nothing.</param>
    /// <exception cref="ArgumentException">There is no future.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A date lies outside 0 to the last place.</exception>
    public static DateDistribution Of(IReadOnlyList<int?> dates, int lastPlace, int certainUntil, double spread)
    {
        ArgumentNullException.ThrowIfNull(dates);
        if (dates.Count == 0) throw new ArgumentException("A distribution needs at least one future.", nameof(dates));
        foreach (int? date in dates)
        {
            if (date is { } place && (uint)place > (uint)lastPlace) throw new ArgumentOutOfRangeException(nameof(dates), place, $"A date was {place} days ahead; allowed is 0 to {lastPlace}.");
        }

        int[] beyond = [.. dates.Where(date => date > certainUntil).Select(date => date!.Value)];
        double deviation = spread * Deviation(beyond);
        double[] kernel = Kernel(deviation);
        var chances = new double[lastPlace + 1];
        double within = 0;
        foreach (int? date in dates)
        {
            if (date is not { } place) continue;
            if (place <= certainUntil || kernel.Length == 1)
            {
                chances[place] += 1;
                continue;
            }

            within += Spread(chances, place, certainUntil + 1, lastPlace, kernel);
        }

        double sum = 0;
        for (int i = 0; i <= lastPlace; i++)
        {
            sum += chances[i] / dates.Count;
            chances[i] = Math.Min(1, sum);
        }

        return new DateDistribution(chances, dates.Count, within / dates.Count);
    }

    /// <summary>The first place by which it has come with at least a chance; null where it never is so likely.</summary>
    /// <param name="chance">The chance, above 0 up to 1.</param>
    public int? Quantile(double chance)
    {
        for (int i = 0; i < cumulative.Length; i++)
        {
            if (cumulative[i] >= chance - 1e-12) return i;
        }

        return null;
    }

    /// <summary>
    /// The range of whole days that holds it with a chance as near to 80 % as whole days allow: its ends lie on one side or the other of the 10 and the 90 % quantile, and of the four ways to round them that one is
    /// taken whose chance is nearest. Each end rounded to its nearest day by itself held more than was wanted where a range is short: with a forecast three days before a date 88 to 90 % instead of 85 to 88 % (the tool
    /// hindcast of tests/GddWatch.Validation). The end is null where "not at all" is nearer. The median lies within it.
    /// <para>The chance of the p quantile: ((n + ⅓)·p + ⅓ − ½)/n, with n futures each in the middle of its step, and so a little outside of p; the plain share held too few. Source: median-unbiased quantile, type 8 of
    /// Hyndman &amp; Fan 1996, Am. Stat. 50:361-365 (SEEN, science reference 5.2).</para>
    /// </summary>
    public (int First, int? Last) Range()
    {
        double low = Math.Max(0, (0.1 * (Futures + 1 / 3.0) + 1 / 3.0 - 0.5) / Futures), high = 1 - low;
        int median = Quantile(0.5) ?? cumulative.Length;
        int from = Array.FindIndex(cumulative, chance => chance > low + 1e-12), until = Quantile(high) ?? cumulative.Length;
        if (from < 0) return (LastPlace, null);
        (int First, int Last) best = (from, until);
        double nearest = double.PositiveInfinity;
        // With less than half of the chance left after it, "not at all" is the place after the last one.
        foreach (int last in (int[])[until - 1, until])
        {
            foreach (int first in (int[])[from + 1, from])
            {
                if (first > median || last < median || first > last) continue;
                double distance = Math.Abs(Holding(first, last) - (high - low));
                if (distance >= nearest - 1e-9) continue;
                nearest = distance;
                best = (first, last);
            }
        }

        return (Math.Min(best.First, LastPlace), best.Last > LastPlace ? null : best.Last);
    }

    /// <summary>The chance that it comes on the days of a range; one without an end holds "not at all" too.</summary>
    public double Holding((int First, int? Last) range) => Holding(range.First, range.Last ?? cumulative.Length);

    private double Holding(int first, int last) => (last > LastPlace ? 1 : By(last)) - By(first - 1);

    private static double Deviation(int[] dates)
    {
        if (dates.Length < 2) return 0;
        double mean = dates.Average();
        return Math.Sqrt(dates.Sum(date => (date - mean) * (date - mean)) / (dates.Length - 1));
    }

    /// <summary>Weights of 0, 1, 2 … days beside a date.</summary>
    private static double[] Kernel(double deviation)
    {
        if (deviation < 0.05) return [1];
        var weights = new double[(int)Math.Ceiling(3 * deviation) + 1];
        for (int i = 0; i < weights.Length; i++) weights[i] = Math.Exp(-i * i / (2 * deviation * deviation));
        return weights;
    }

    /// <summary>Spreads one date; gives the mean distance of two draws from it.</summary>
    private static double Spread(double[] chances, int place, int first, int last, double[] kernel)
    {
        int from = Math.Max(first, place - kernel.Length + 1), until = Math.Min(last, place + kernel.Length - 1);
        double sum = 0;
        for (int i = from; i <= until; i++) sum += kernel[Math.Abs(i - place)];
        double by = 0, gap = 0;
        for (int i = from; i <= until; i++)
        {
            double chance = kernel[Math.Abs(i - place)] / sum;
            chances[i] += chance;
            by += chance;
            gap += 2 * by * (1 - by);
        }

        return Math.Max(0, gap);
    }
}
