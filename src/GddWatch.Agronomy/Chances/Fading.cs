namespace GddWatch.Agronomy.Chances;

/// <summary>
/// How the departure of a daily temperature from what is usual fades, on two time scales: the weather's, and the slower one of a season that is warm or cold as a whole.
/// <para>With a the departure of the last day, m its mean over the days before weighted by exp(−k/10 d), what is left after h days is expected to be
/// (a − m)·exp(−h/τ) + m·w·exp(−h/τs) [°C].</para>
/// <para>Source: first-order autoregression on two scales, textbook statistics (MEMORY).</para>
/// </summary>
/// <param name="FastDays">τ, the e-folding time of the weather's part [days].</param>
/// <param name="SlowShare">w, the share of the slow part that goes on.</param>
/// <param name="SlowDays">τs, the e-folding time of the slow part [days].</param>
public sealed record Fading(double FastDays, double SlowShare, double SlowDays)
{
    /// <summary>The e-folding time of the weights that make the slow part [days]; DESIGN.</summary>
    public const double SlowMemoryDays = 10;

    /// <summary>How many days back the slow part looks [days]; what lies further back has a weight of 1 % or less.</summary>
    public const int SlowReachDays = 45;

    /// <summary>So many years' worth of pairs the usual values weigh against a site's own; DESIGN.</summary>
    private const double UsualWeighsYears = 10;

    private const int SlowLagDays = 14;

    /// <summary>
    /// What is usual for the mean air temperature. Regression over half of the 40 humid stations of the US Climate Reference Network, product CRND0103, 2010 to 2023, the weeks about 28 to 3 days before the soil usually passes 10 °C (CALC):
    /// the fast part fell to 0.34 after 2 days, the slow one to 0.57 after 2 and 0.22 after 14 days; at all of them 0.33, 0.51 and 0.18.
    /// </summary>
    public static Fading UsualAir { get; } = new(1.8, 0.66, 13);

    /// <summary>
    /// What is usual for by how much the soil at 5 cm is measured warmer than the model makes it of the air. From the same half (CALC): the fast part fell to 0.43 after 3 days, the slow one to 0.79 after 3 and 0.53
    /// after 14 days; at all of them 0.38, 0.78 and 0.52.
    /// </summary>
    public static Fading UsualSoil { get; } = new(3.6, 0.88, 27);

    /// <summary>What is left of the fast part after some days, as a share.</summary>
    public double FastLeft(int days) => Math.Exp(-days / FastDays);

    /// <summary>What is left of the slow part after some days, as a share.</summary>
    public double SlowLeft(int days) => SlowShare * Math.Exp(-days / SlowDays);

    /// <summary>
    /// Measures the fading in a site's own years: least squares of the departure h days on, on the fast and the slow part, for a short h and for 14 days; the coefficients are drawn towards the usual ones, which
    /// weigh as much as 10 years.
    /// <para>Missing input: pairs with a missing value are left out; without any pair the usual fading.</para>
    /// </summary>
    /// <param name="years">The departures of each year, one value a day, the same day of the year at the same place [°C]; NaN where missing.</param>
    /// <param name="starts">The places from which is looked ahead.</param>
    /// <param name="fastLagDays">The short lag [days].</param>
    /// <param name="usual">The usual fading.</param>
    public static Fading Measure(IReadOnlyList<double[]> years, IReadOnlyList<int> starts, int fastLagDays, Fading usual)
    {
        ArgumentNullException.ThrowIfNull(years);
        ArgumentNullException.ThrowIfNull(starts);
        ArgumentNullException.ThrowIfNull(usual);
        (double fast, double slow) = Coefficients(years, starts, fastLagDays, usual);
        (_, double later) = Coefficients(years, starts, SlowLagDays, usual);
        double fastDays = Within(-fastLagDays / Math.Log(Within(fast, 0.01, 0.99)), 0.5, 15);
        double slowDays = slow > later && later > 0 ? Within((SlowLagDays - fastLagDays) / Math.Log(slow / later), 8, 60) : later > 0 ? 60 : 8;
        double share = Within(later * Math.Exp(SlowLagDays / slowDays), 0, 1);
        return new Fading(fastDays, share, slowDays);
    }

    /// <summary>The weighted mean of the departures up to a place [°C].</summary>
    public static double SlowPart(ReadOnlySpan<double> departures, int place)
    {
        double sum = 0, weights = 0, weight = 1;
        double fade = Math.Exp(-1 / SlowMemoryDays);
        for (int i = place; i >= 0 && i > place - SlowReachDays; i--, weight *= fade)
        {
            if (double.IsNaN(departures[i])) continue;
            sum += weight * departures[i];
            weights += weight;
        }

        return weights > 0 ? sum / weights : 0;
    }

    private static (double Fast, double Slow) Coefficients(IReadOnlyList<double[]> years, IReadOnlyList<int> starts, int lag, Fading usual)
    {
        double xx = 0, xm = 0, mm = 0, xy = 0, my = 0;
        foreach (double[] year in years)
        {
            foreach (int start in starts)
            {
                if (start < 0 || start + lag >= year.Length) continue;
                double slow = SlowPart(year, start);
                double fast = year[start] - slow;
                double later = year[start + lag];
                if (double.IsNaN(fast + later)) continue;
                xx += fast * fast;
                xm += fast * slow;
                mm += slow * slow;
                xy += fast * later;
                my += slow * later;
            }
        }

        double weight = years.Count / (years.Count + UsualWeighsYears);
        double determinant = xx * mm - xm * xm;
        (double usualFast, double usualSlow) = (usual.FastLeft(lag), usual.SlowLeft(lag));
        if (!(determinant > 1e-6 * xx * mm) || xx <= 0) return (usualFast, usualSlow);
        double ownFast = (xy * mm - my * xm) / determinant;
        double ownSlow = (my * xx - xy * xm) / determinant;
        return (weight * ownFast + (1 - weight) * usualFast, weight * ownSlow + (1 - weight) * usualSlow);
    }

    private static double Within(double value, double lowest, double highest) => Math.Min(highest, Math.Max(lowest, value));
}
