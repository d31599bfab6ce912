using GddWatch.Agronomy.Soil;
using GddWatch.Agronomy.Turf;
using GddWatch.Agronomy.Weather;
using GddWatch.Validation.Scoring;
using GddWatch.Validation.Weather;
using MathNet.Numerics.LinearAlgebra;

namespace GddWatch.Validation.Report;

/// <summary>
/// Whether measured sun and humidity would better the default estimate: what is left of its error is fitted on them over the other humid stations, and the
/// station left out is scored with and without, on the same days.
/// </summary>
internal static class SunAndHumidityPart
{
    private const int SmoothedDays = 7;

    public static void Write(ReportPage page, FigureList figures, Evidence evidence)
    {
        SoilEstimate estimate = evidence.Models.Single(model => model.Chosen).Estimate;
        MeasuredStation[] stations = [.. evidence.Stations];
        int[] humid = [.. Enumerable.Range(0, stations.Length).Where(i => stations[i].IsHumid)];
        (double[][] Terms, double[] Left)[] days = [.. humid.Select(i => DaysOf(stations[i], estimate.MeanC[i]))];
        (string Name, int[] Columns)[] trials = [("nothing added", []), ("measured sun", [0, 1, 2]), ("measured humidity", [0, 3]), ("both", [0, 1, 2, 3])];
        page.Heading("Would measured sun and humidity help?");
        page.Text(
            "What is left of the default model's error is fitted, by least squares on the other humid stations, on the 7-day means of measured solar radiation (beside the radiation above the atmosphere) and of "
            + "relative humidity, and the station left out is scored with that correction. Only days are counted on which both are measured.");
        List<IReadOnlyList<string>> rows = [];
        foreach ((string name, int[] columns) in trials)
        {
            (double error, long count) = HeldOutError(days, columns);
            rows.Add([name, Shown.Plain(error)]);
            figures.Add("sun and humidity", name, "humid", "year", "RMSE pooled", error, "degC", count);
        }

        page.Table("Error at 5 cm, humid stations, whole year, held out [°C]", ["Added to the default model", "Typical error"], rows);
    }

    /// <summary>For each day that knows all: the terms 1, sun, sun above the atmosphere, humidity; and what the estimate left over.</summary>
    private static (double[][] Terms, double[] Left) DaysOf(MeasuredStation station, double[] estimateC)
    {
        List<double[]> terms = [];
        List<double> left = [];
        ReadOnlySpan<double> sun = station.Series.Column(WeatherVariable.SolarRadiationMJ), humidity = station.Series.Column(WeatherVariable.RelativeHumidityPercent);
        if (sun.IsEmpty || humidity.IsEmpty) return ([], []);
        double[] sunMean = RunningMean.Over(sun, SmoothedDays), humidityMean = RunningMean.Over(humidity, SmoothedDays), measured = station.MeasuredC[5];
        for (int day = 0; day < measured.Length; day++)
        {
            double rest = measured[day] - estimateC[day];
            if (double.IsNaN(rest + sunMean[day] + humidityMean[day])) continue;
            terms.Add([1, sunMean[day], ExtraterrestrialRadiation.MJPerM2(station.LatitudeDegrees, station.Series.DayAt(day).DayOfYear), humidityMean[day]]);
            left.Add(rest);
        }

        return ([.. terms], [.. left]);
    }

    private static (double Error, long Days) HeldOutError((double[][] Terms, double[] Left)[] stations, int[] columns)
    {
        int size = columns.Length;
        (Matrix<double> Gram, Vector<double> Right)[] own = [.. stations.Select(station => Normal(station, columns))];
        double squares = 0;
        long count = 0;
        for (int leftOut = 0; leftOut < stations.Length; leftOut++)
        {
            Vector<double>? weights = null;
            if (size > 0)
            {
                Matrix<double> gram = Matrix<double>.Build.Dense(size, size);
                Vector<double> right = Vector<double>.Build.Dense(size);
                for (int i = 0; i < own.Length; i++)
                {
                    if (i == leftOut) continue;
                    gram += own[i].Gram;
                    right += own[i].Right;
                }

                weights = gram.Solve(right);
            }

            (double[][] terms, double[] rest) = stations[leftOut];
            for (int day = 0; day < rest.Length; day++)
            {
                double error = rest[day];
                for (int c = 0; c < size; c++) error -= weights![c] * terms[day][columns[c]];
                squares += error * error;
                count++;
            }
        }

        return (Math.Sqrt(squares / count), count);
    }

    private static (Matrix<double> Gram, Vector<double> Right) Normal((double[][] Terms, double[] Left) station, int[] columns)
    {
        Matrix<double> gram = Matrix<double>.Build.Dense(Math.Max(1, columns.Length), Math.Max(1, columns.Length));
        Vector<double> right = Vector<double>.Build.Dense(Math.Max(1, columns.Length));
        for (int day = 0; day < station.Left.Length; day++)
        {
            for (int i = 0; i < columns.Length; i++)
            {
                right[i] += station.Terms[day][columns[i]] * station.Left[day];
                for (int j = 0; j < columns.Length; j++) gram[i, j] += station.Terms[day][columns[i]] * station.Terms[day][columns[j]];
            }
        }

        return (gram, right);
    }
}
