namespace GddWatch.Agronomy.Tests.Turf;

/// <summary>How two columns agree on the days on which both are known.</summary>
/// <param name="Days">How many days.</param>
/// <param name="Bias">Mean of ours less theirs.</param>
/// <param name="MeanAbsolute">Mean absolute difference.</param>
/// <param name="Correlation">Correlation.</param>
internal readonly record struct Agreement(int Days, double Bias, double MeanAbsolute, double Correlation)
{
    public static Agreement Of(IEnumerable<(double Ours, double Theirs)> pairs)
    {
        (double Ours, double Theirs)[] known = [.. pairs.Where(pair => !double.IsNaN(pair.Ours) && !double.IsNaN(pair.Theirs))];
        double correlation = MathNet.Numerics.Statistics.Correlation.Pearson(known.Select(pair => pair.Ours), known.Select(pair => pair.Theirs));
        return new Agreement(
            known.Length, known.Average(pair => pair.Ours - pair.Theirs), known.Average(pair => Math.Abs(pair.Ours - pair.Theirs)), correlation);
    }
}
