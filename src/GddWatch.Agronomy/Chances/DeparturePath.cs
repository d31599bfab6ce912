namespace GddWatch.Agronomy.Chances;

/// <summary>
/// How a daily temperature may go on: x(k) = u(k) + f(k) + g·(d(k) − f′(k)), with u what is usual k days ahead, f what is left of this year's departure and f′ of the past year's own one, both as <see cref="Fading"/>,
/// d the past year's departure. g = √((n + 1)/(n − 1)) for n years: so many years show less than the whole spread, and what is usual is only known from them.
/// <para>Where a forecast reaches, its days are given and the fading begins at its end.</para>
/// <para>Source of g: variance of a new value about the mean of n, textbook statistics (CALC).</para>
/// </summary>
internal sealed class DeparturePath
{
    private readonly YearlyCourse course;
    private readonly double[] present;
    private readonly double[] fastLeft;
    private readonly double[] slowLeft;
    private readonly double widening;

    /// <summary>Prepares the ways ahead of one temperature.</summary>
    /// <param name="course">It over the years.</param>
    /// <param name="fading">How its departures fade.</param>
    /// <param name="years">From how many years it is known.</param>
    public DeparturePath(YearlyCourse course, Fading fading, int years)
    {
        this.course = course;
        present = course.Present;
        fastLeft = new double[course.DaysAhead + 1];
        slowLeft = new double[course.DaysAhead + 1];
        for (int days = 0; days <= course.DaysAhead; days++) (fastLeft[days], slowLeft[days]) = (fading.FastLeft(days), fading.SlowLeft(days));
        widening = Math.Sqrt((years + 1.0) / (years - 1.0));
    }

    /// <summary>The way of one future: place 0 is the first day ahead [°C].</summary>
    /// <param name="year">The departures of the past year without holes, its place of the day as in <see cref="YearlyCourse.Zero"/>.</param>
    /// <param name="given">The first days as they are given, by a forecast and its error [°C].</param>
    public double[] Of(double[] year, ReadOnlySpan<double> given)
    {
        int zero = YearlyCourse.Zero, reach = given.Length;
        var mine = new double[zero + 1 + reach];
        present.CopyTo(mine, 0);
        for (int k = 1; k <= reach; k++) mine[zero + k] = given[k - 1] - course.Usual(k);
        (double fast, double slow) = Parts(mine, zero + reach);
        (double fastThen, double slowThen) = Parts(year, zero + reach);
        var way = new double[course.DaysAhead];
        given.CopyTo(way);
        for (int k = reach + 1; k <= way.Length; k++)
        {
            int since = k - reach;
            double left = fast * fastLeft[since] + slow * slowLeft[since];
            double leftThen = fastThen * fastLeft[since] + slowThen * slowLeft[since];
            way[k - 1] = course.Usual(k) + left + widening * (year[zero + k] - leftThen);
        }

        return way;
    }

    private static (double Fast, double Slow) Parts(double[] departures, int place)
    {
        double slow = Fading.SlowPart(departures, place);
        double last = departures[place];
        return (double.IsNaN(last) ? 0 : last - slow, slow);
    }
}
