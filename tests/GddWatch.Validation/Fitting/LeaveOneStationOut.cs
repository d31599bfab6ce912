using System.Diagnostics;
using GddWatch.Agronomy.Soil;
using GddWatch.Validation.Scoring;
using GddWatch.Validation.Weather;

namespace GddWatch.Validation.Fitting;

/// <summary>Estimates for every station with constants that were fitted, weights and all, on the other stations.</summary>
/// <param name="Constants">The constants of each fold, in the order of <see cref="TurfSoilFit.Constants"/>.</param>
/// <param name="WithRain">By depth [cm].</param>
/// <param name="AirOnly">The same with the precipitation withheld.</param>
internal sealed record LeaveOneStationOut(
    double[][] Constants, IReadOnlyDictionary<int, SoilEstimate> WithRain, IReadOnlyDictionary<int, SoilEstimate> AirOnly)
{
    private const int Searches = 2;
    private const int StepsEach = 4;
    private static readonly int[] DepthsCm = [5, 10, 20];

    /// <summary>Refits for each station in turn, starting at constants fitted on all of them.</summary>
    public static LeaveOneStationOut Run(double[] start, IReadOnlyList<MeasuredStation> stations, int threads)
    {
        Stopwatch watch = Stopwatch.StartNew();
        GaussNewton fit = TurfSoilFit.On(stations);
        var constants = new double[stations.Count][];
        Dictionary<int, SoilEstimate> withRain = DepthsCm.ToDictionary(depth => depth, depth => SoilEstimate.Empty(stations, depth));
        Dictionary<int, SoilEstimate> airOnly = DepthsCm.ToDictionary(depth => depth, depth => SoilEstimate.Empty(stations, depth));
        int done = 0;
        Parallel.For(0, stations.Count, new ParallelOptions { MaxDegreeOfParallelism = threads }, i =>
        {
            constants[i] = fit.Fit(start, other => other != i, Searches, StepsEach);
            ISoilTemperatureModel model = TurfSoilFit.Model(constants[i]);
            foreach (int depth in DepthsCm)
            {
                withRain[depth].Fill(i, model, stations[i], withRain: true);
                airOnly[depth].Fill(i, model, stations[i], withRain: false);
            }

            int count = Interlocked.Increment(ref done);
            Console.Error.WriteLine($"fold {count} of {stations.Count} without {stations[i].Name}: {watch.Elapsed.TotalSeconds:0} s");
        });
        return new LeaveOneStationOut(constants, withRain, airOnly);
    }

    /// <summary>
    /// The standard error of a constant, by the jackknife over stations: √((n−1)/n Σ(value of a fold − mean of the folds)²). The days of one station are
    /// so alike that an error taken over days would be far too small.
    /// </summary>
    public double StandardError(int constant)
    {
        double[] values = [.. Constants.Select(fold => fold[constant])];
        double mean = values.Average();
        return Math.Sqrt((values.Length - 1.0) / values.Length * values.Sum(value => (value - mean) * (value - mean)));
    }
}
