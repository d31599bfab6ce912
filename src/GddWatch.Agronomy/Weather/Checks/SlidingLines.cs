using System.Numerics;

namespace GddWatch.Agronomy.Weather.Checks;

/// <summary>
/// The lines of all neighbours over the days before, kept from day to day: the new day is added to their sums and the oldest taken from them, several neighbours in one step. They tell only whether a
/// value could be far from a line; what is doubted goes by lines made afresh.
/// </summary>
internal sealed class SlidingLines
{
    // Beyond what sums that slide can be off: by some 1e-10 °C where the neighbours' temperatures vary at all.
    private const double RoomC = 0.01;
    private const double LeastVariance = 0.01;

    // Rounding grows with every step, slowly: the sums begin anew from time to time.
    private const int MostSteps = 1000;

    /// <summary>The days at hand: today, those of the window, and the one that leaves it; a power of two.</summary>
    private const int DaysAtHand = 64;

    private readonly CheckedValues values;
    private readonly WeatherVariable variable;
    private readonly Neighbour[] neighbours;

    // A place for each neighbour, and so many more that they fill whole steps; in those nothing is ever known.
    private readonly int width;
    private readonly double[] theirs;
    private readonly double[] counts;
    private readonly double[] own;
    private readonly double[] their;
    private readonly double[] products;
    private readonly double[] squares;

    private int next = -1;
    private int changes = -1;
    private int steps;

    public SlidingLines(CheckedValues values, WeatherVariable variable, Neighbour[] neighbours)
    {
        this.values = values;
        this.variable = variable;
        this.neighbours = neighbours;
        width = (neighbours.Length + Vector<double>.Count - 1) / Vector<double>.Count * Vector<double>.Count;
        theirs = new double[DaysAtHand * width];
        Array.Fill(theirs, double.NaN);
        counts = new double[width];
        own = new double[width];
        their = new double[width];
        products = new double[width];
        squares = new double[width];
    }

    /// <summary>
    /// Whether a value of today could be as far from any neighbour's line as one that is doubted, each line taken at that of the neighbour's values of yesterday and today which lies nearest.
    /// <para>With n days, sums S and the line's slope C/V, C = n·Sxy − Sx·Sy and V = n·Sxx − Sx², the distance is |(n·T − Sy)·V − C·(n·N − Sx)|/(n·V).</para>
    /// </summary>
    public bool MayBeFar(double valueC, int today)
    {
        AdvanceTo(today);
        ReadOnlySpan<double> yesterdays = DayOf(today - 1), todays = DayOf(today);
        var value = new Vector<double>(valueC);
        for (int i = 0; i < width; i += Vector<double>.Count)
        {
            Vector<double> before = new(yesterdays[i..]), now = new(todays[i..]);
            Vector<long> isNowNearer = Vector.AndNot(Vector.Equals(now, now), Vector.LessThanOrEqual(Vector.Abs(before - value), Vector.Abs(now - value)));
            Vector<double> nearest = Vector.ConditionalSelect(isNowNearer, now, before);
            Vector<double> count = new(counts, i), ownSum = new(own, i), theirSum = new(their, i);
            Vector<double> variance = (count * new Vector<double>(squares, i)) - (theirSum * theirSum);
            Vector<double> covariance = (count * new Vector<double>(products, i)) - (ownSum * theirSum);
            Vector<double> apart = Vector.Abs((((count * value) - ownSum) * variance) - (covariance * ((count * nearest) - theirSum)));
            Vector<long> mayBe = Vector.LessThan(variance, count * count * LeastVariance)
                | Vector.GreaterThanOrEqual(apart, count * variance * (SpatialRegressionCheck.LeastResidualC - RoomC));
            Vector<long> isKnown = Vector.GreaterThanOrEqual(count, new Vector<double>(SpatialRegressionCheck.LeastCommonDays)) & Vector.Equals(nearest, nearest);
            if ((mayBe & isKnown) != Vector<long>.Zero) return true;
        }

        return false;
    }

    /// <summary>Takes in the days before today.</summary>
    private void AdvanceTo(int today)
    {
        if (next != today - 1 || changes != values.Changes || steps++ > MostSteps)
        {
            foreach (double[] sums in (ReadOnlySpan<double[]>)[counts, own, their, products, squares]) Array.Clear(sums);
            steps = 0;
            for (int i = today - SpatialRegressionCheck.WindowDays; i < today; i++)
            {
                BringToHand(i);
                Add(i, 1);
            }
        }
        else
        {
            Add(today - 1 - SpatialRegressionCheck.WindowDays, -1);
            Add(today - 1, 1);
        }

        BringToHand(today);
        (next, changes) = (today, values.Changes);
    }

    private void Add(int index, int sign)
    {
        double ownC = values.PassedBy(QualityCheck.SpatialRegression, variable, index);
        if (double.IsNaN(ownC)) return;
        ReadOnlySpan<double> day = DayOf(index);
        var one = new Vector<double>(sign);
        for (int i = 0; i < width; i += Vector<double>.Count)
        {
            Vector<double> theirC = new(day[i..]);
            Vector<long> isKnown = Vector.Equals(theirC, theirC);
            Vector<double> counted = Vector.ConditionalSelect(isKnown, one, Vector<double>.Zero);
            theirC = Vector.ConditionalSelect(isKnown, theirC, Vector<double>.Zero);
            (new Vector<double>(counts, i) + counted).CopyTo(counts, i);
            (new Vector<double>(own, i) + (counted * ownC)).CopyTo(own, i);
            (new Vector<double>(their, i) + (counted * theirC)).CopyTo(their, i);
            (new Vector<double>(products, i) + (counted * ownC * theirC)).CopyTo(products, i);
            (new Vector<double>(squares, i) + (counted * theirC * theirC)).CopyTo(squares, i);
        }
    }

    private void BringToHand(int index)
    {
        Span<double> day = DayOf(index);
        for (int i = 0; i < neighbours.Length; i++) day[i] = neighbours[i].At(index);
    }

    private Span<double> DayOf(int index) => theirs.AsSpan((index & (DaysAtHand - 1)) * width, width);
}
