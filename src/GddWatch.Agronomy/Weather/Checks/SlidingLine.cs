namespace GddWatch.Agronomy.Weather.Checks;

/// <summary>
/// The line of one neighbour over the days before, kept from day to day: the new day is added to its sums and the oldest taken from them. It tells only whether a value
/// could be far from the line; what is doubted goes by lines made afresh.
/// </summary>
internal sealed class SlidingLine(CheckedValues values, WeatherVariable variable, Neighbour neighbour)
{
    // Beyond what sums that slide can be off: by some 1e-10 °C where the neighbour's temperatures vary at all.
    private const double RoomC = 0.01;
    private const double LeastVariance = 0.01;

    // Rounding grows with every step, slowly: the sums begin anew from time to time.
    private const int MostSteps = 1000;

    private int next = -1;
    private int changes = -1;
    private int steps;
    private int count;
    private double own;
    private double their;
    private double products;
    private double squares;

    public Neighbour Neighbour => neighbour;

    /// <summary>Takes in the days before today.</summary>
    public void AdvanceTo(int today)
    {
        if (next != today - 1 || changes != values.Changes || steps++ > MostSteps)
        {
            (count, own, their, products, squares, steps) = (0, 0, 0, 0, 0, 0);
            for (int i = today - SpatialRegressionCheck.WindowDays; i < today; i++) Add(i, 1);
        }
        else
        {
            Add(today - 1 - SpatialRegressionCheck.WindowDays, -1);
            Add(today - 1, 1);
        }

        (next, changes) = (today, values.Changes);
    }

    /// <summary>Whether a value could be as far from the line as one that is doubted, the neighbour's nearest value given.</summary>
    public bool MayBeFar(double valueC, double nearestC)
    {
        if (count < SpatialRegressionCheck.LeastCommonDays || double.IsNaN(nearestC)) return false;
        double ownMean = own / count;
        double theirMean = their / count;
        double variance = (squares / count) - (theirMean * theirMean);
        if (variance < LeastVariance) return true;
        double slope = ((products / count) - (ownMean * theirMean)) / variance;
        return Math.Abs(valueC - ownMean - (slope * (nearestC - theirMean))) >= SpatialRegressionCheck.LeastResidualC - RoomC;
    }

    private void Add(int index, int sign)
    {
        double ownC = values.PassedBy(QualityCheck.SpatialRegression, variable, index);
        double theirC = neighbour.At(index);
        if (double.IsNaN(ownC) || double.IsNaN(theirC)) return;
        count += sign;
        own += sign * ownC;
        their += sign * theirC;
        products += sign * ownC * theirC;
        squares += sign * theirC * theirC;
    }
}
