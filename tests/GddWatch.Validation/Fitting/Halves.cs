using GddWatch.Validation.Scoring;
using GddWatch.Validation.Weather;
using MathNet.Numerics;

namespace GddWatch.Validation.Fitting;

/// <summary>A harder check than leaving one station out: constants from a random half of the stations, judged on the other half.</summary>
internal static class Halves
{
    private const int Searches = 4;
    private const int StepsEach = 40;

    /// <summary>Estimates at 5 cm, each station with constants of the half that it is not in; every fit starts at the priors.</summary>
    public static SoilEstimate Estimate(IReadOnlyList<MeasuredStation> stations, int seed, int threads)
    {
        int[] order = [.. Enumerable.Range(0, stations.Count)];
        Combinatorics.SelectPermutationInplace(order, new Random(seed));
        HashSet<int> half = [.. order.Take(stations.Count / 2)];
        GaussNewton fit = TurfSoilFit.On(stations);
        SoilEstimate estimate = SoilEstimate.Empty(stations, 5);
        Parallel.ForEach((bool[])[true, false], new ParallelOptions { MaxDegreeOfParallelism = threads }, judged =>
        {
            double[] constants = fit.Fit(TurfSoilFit.PriorMeans, i => half.Contains(i) != judged, Searches, StepsEach);
            for (int i = 0; i < stations.Count; i++)
            {
                if (half.Contains(i) == judged) estimate.Fill(i, TurfSoilFit.Model(constants), stations[i], withRain: true);
            }
        });
        return estimate;
    }
}
