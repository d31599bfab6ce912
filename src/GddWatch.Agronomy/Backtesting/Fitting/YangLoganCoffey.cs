namespace GddWatch.Agronomy.Backtesting.Fitting;

/// <summary>
/// The base temperature x that makes a criterion smallest, in closed form, from the days d from the start to each event and the mean temperature T over them. They
/// reckon with d·(T − x) and so hold only where no day lies below the base; a sum that leaves such days out is searched on a grid instead (<see cref="DateFitter"/>).
/// <para>With A = Σd²T², B = Σd²T, C = Σd², P = ΣdT, Q = Σd, t = mean T, a = A − P²/n, b = B − PQ/n, c = C − Q²/n.</para>
/// <para>Source: Yang, Logan and Coffey 1995, Mathematical formulae for calculating the base temperature for growing degree days, Agric. For. Meteorol. 74:61-74
/// (existence SEEN, formulae derived and checked, science reference 5.4, CALC).</para>
/// </summary>
public sealed class YangLoganCoffey
{
    private readonly int n;
    private readonly double a2, b2, c2, p, q, t, sumT, sumDaysT2;

    /// <summary>Takes the events.</summary>
    /// <param name="days">Days from the start to each event [days].</param>
    /// <param name="meansC">Mean temperature over them [°C].</param>
    /// <exception cref="ArgumentException">There are fewer than three events, or the two differ in number.</exception>
    public YangLoganCoffey(IReadOnlyList<double> days, IReadOnlyList<double> meansC)
    {
        ArgumentNullException.ThrowIfNull(days);
        ArgumentNullException.ThrowIfNull(meansC);
        n = days.Count;
        if (n < 3 || meansC.Count != n) throw new ArgumentException($"The criteria need at least three events, each with its days and its mean temperature; {n} and {meansC.Count} were given.", nameof(days));
        for (int i = 0; i < n; i++)
        {
            double d = days[i], mean = meansC[i];
            a2 += d * d * mean * mean;
            b2 += d * d * mean;
            c2 += d * d;
            p += d * mean;
            q += d;
            sumT += mean;
            sumDaysT2 += d * mean * mean;
        }

        t = sumT / n;
    }

    private double Aa => a2 - p * p / n;

    private double Bb => b2 - p * q / n;

    private double Cc => c2 - q * q / n;

    /// <summary>Least standard deviation of the heat [°C]: x = b/c. Runs away where the days hardly differ.</summary>
    public double LeastDeviationInHeatC => Bb / Cc;

    /// <summary>Least standard deviation in days [°C]: x = (b·t − a)/(c·t − b).</summary>
    public double LeastDeviationInDaysC => (Bb * t - Aa) / (Cc * t - Bb);

    /// <summary>Least coefficient of variation of the heat [°C]: x = (B·P − Q·A)/(C·P − B·Q).</summary>
    public double LeastCoefficientOfVariationC => (b2 * p - q * a2) / (c2 * p - b2 * q);

    /// <summary>No slope of the heat on the mean temperature [°C]: x = (n·ΣdT² − ΣT·P)/(n·P − ΣT·Q).</summary>
    public double NoSlopeC => (n * sumDaysT2 - sumT * p) / (n * p - sumT * q);
}
