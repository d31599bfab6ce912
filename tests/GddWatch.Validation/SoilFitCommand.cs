using System.Diagnostics;
using GddWatch.Validation.Fitting;
using GddWatch.Validation.Scoring;
using GddWatch.Validation.Weather;

namespace GddWatch.Validation;

/// <summary>Fits the constants of the default soil model on the public files and says how well they do at stations left out.</summary>
internal static class SoilFitCommand
{
    private const int Searches = 5;
    private const int StepsEach = 40;
    private const int HalvesTried = 3;

    public static void Run(string weatherFolder, TextWriter output, int threads)
    {
        Stopwatch watch = Stopwatch.StartNew();
        IReadOnlyList<MeasuredStation> stations = UscrnStations.Read(Path.Combine(weatherFolder, "uscrn-daily"));
        Console.Error.WriteLine($"{stations.Count} stations read: {watch.Elapsed.TotalSeconds:0.0} s");
        double[] fitted = TurfSoilFit.On(stations).Fit(TurfSoilFit.PriorMeans, _ => true, Searches, StepsEach);
        Console.Error.WriteLine($"fitted on all stations, starting at the priors: {watch.Elapsed.TotalSeconds:0.0} s");
        LeaveOneStationOut heldOut = LeaveOneStationOut.Run(fitted, stations, threads);

        PrintConstants(output, fitted, heldOut);
        output.WriteLine();
        output.WriteLine("Daily mean soil temperature at 5 cm, estimate against measurement; differences are estimate - measured [degC].");
        output.WriteLine("pooled: over all station-days. stations: mean over the stations of each one's own figure. held: share of days in the 80 % range.");
        PrintScores(output, "Each station estimated with constants fitted on the other stations", stations, heldOut.WithRain[5]);
        PrintScores(output, "The same, precipitation withheld", stations, heldOut.AirOnly[5]);
        PrintScores(output, "Constants fitted on all stations (not held out)", stations, SoilEstimate.Of(TurfSoilFit.Model(fitted), stations, 5));
        PrintScores(output, "Constants in code (not held out)", stations, SoilEstimate.Of(TurfSoilFit.Model(TurfSoilFit.ValuesInCode), stations, 5));
        for (int seed = 1; seed <= HalvesTried; seed++)
        {
            PrintScores(output, $"Fitted on a random half of the stations, judged on the other, and the other way round ({seed})", stations, Halves.Estimate(stations, seed, threads));
            Console.Error.WriteLine($"halves, {seed} of {HalvesTried}: {watch.Elapsed.TotalSeconds:0} s");
        }

        PrintScores(output, "At 10 cm, held out", stations, heldOut.WithRain[10]);
        PrintScores(output, "At 20 cm, held out", stations, heldOut.WithRain[20]);
        Console.Error.WriteLine($"done: {watch.Elapsed.TotalSeconds:0} s");
    }

    private static void PrintConstants(TextWriter output, double[] fitted, LeaveOneStationOut heldOut)
    {
        output.WriteLine("Constants. Standard error: jackknife over stations. Distance: (in code - fitted) / standard error.");
        output.WriteLine($"{"constant",-22}{"fitted",12}{"standard error",16}{"in code",12}{"distance",10}");
        for (int k = 0; k < fitted.Length; k++)
        {
            FittedConstant constant = TurfSoilFit.Constants[k];
            double error = heldOut.StandardError(k);
            output.WriteLine($"{constant.Name,-22}{fitted[k],12:0.00000}{error,16:0.00000}{constant.InCode,12:0.00000}{(constant.InCode - fitted[k]) / error,10:0.00}");
        }
    }

    private static void PrintScores(TextWriter output, string title, IReadOnlyList<MeasuredStation> stations, SoilEstimate estimate)
    {
        output.WriteLine();
        output.WriteLine(title);
        output.WriteLine($"{"group",-8}{"part",-9}{"days",9}{"pooled RMSE",13}{"bias",8}{"stations RMSE",15}{"bias",8}{"held",8}");
        foreach (StationGroup group in (StationGroup[])[StationGroup.Humid, StationGroup.Dry, StationGroup.All])
        {
            foreach (PartOfYear part in PartOfYear.Judged)
            {
                Score score = Score.Of(estimate, stations, group, part);
                output.WriteLine(
                    $"{group.Name,-8}{part.Name,-9}{score.Days,9}{score.PooledRmseC,13:0.000}{Sign(score.PooledBiasC),8}"
                    + $"{score.StationRmseC,15:0.000}{Sign(score.StationBiasC),8}{score.Coverage,8:0.0%}");
            }
        }
    }

    private static string Sign(double value) => Report.Shown.Signed(value).Replace('\u2212', '-');
}
