namespace GddWatch.Agronomy.Weather.Checks;

/// <summary>
/// Means, variances and correlation of pairs, gathered one by one (Welford's recurrence, which loses no digits to large sums, MEMORY). Variances and covariance are
/// those of the sample, divided by n − 1.
/// </summary>
internal sealed class PairedMoments
{
    private double squaresOfFirst;
    private double squaresOfSecond;
    private double products;

    public int Count { get; private set; }

    public double MeanOfFirst { get; private set; }

    public double MeanOfSecond { get; private set; }

    public double VarianceOfFirst => squaresOfFirst / (Count - 1);

    public double VarianceOfSecond => squaresOfSecond / (Count - 1);

    public double Covariance => products / (Count - 1);

    public double Correlation => products / Math.Sqrt(squaresOfFirst * squaresOfSecond);

    public double MeanDifference => MeanOfFirst - MeanOfSecond;

    public double DeviationOfDifference => Math.Sqrt(VarianceOfFirst + VarianceOfSecond - (2 * Covariance));

    public void Add(double first, double second)
    {
        Count++;
        double fromMeanOfFirst = first - MeanOfFirst;
        double fromMeanOfSecond = second - MeanOfSecond;
        MeanOfFirst += fromMeanOfFirst / Count;
        MeanOfSecond += fromMeanOfSecond / Count;
        squaresOfFirst += fromMeanOfFirst * (first - MeanOfFirst);
        squaresOfSecond += fromMeanOfSecond * (second - MeanOfSecond);
        products += fromMeanOfFirst * (second - MeanOfSecond);
    }
}
