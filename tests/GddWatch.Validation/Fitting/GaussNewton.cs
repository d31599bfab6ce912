using GddWatch.Validation.Weather;
using MathNet.Numerics.LinearAlgebra;

namespace GddWatch.Validation.Fitting;

/// <summary>
/// Fits constants to measured soil temperature at 5 cm by Gauss-Newton steps with Levenberg's damping and a numeric Jacobian. What is made small is
/// Σ w(station) Σ difference² over the days, plus a weak pull of each constant to its prior. A station that no constants fit (a drifting sensor, a
/// slope) gets little weight: w = (1 humid, 0.4 dry) / (1 + (its error / 1.4 °C)⁴), taken anew before each search.
/// </summary>
internal sealed class GaussNewton(
    IReadOnlyList<FittedConstant> constants, IReadOnlyList<MeasuredStation> stations, Action<double[], MeasuredStation, double[]> simulate)
{
    private const double DryWeight = 0.4;
    private const double DoubtedErrorC = 1.4;
    private const double PriorStrength = 500;
    private const double RelativeStep = 1e-3;
    private const double SmallestStep = 1e-4;
    private const double EnoughGain = 1e-5;
    private const int DampingTries = 6;

    private readonly int[][] measuredDays = [.. stations.Select(MeasuredDays)];

    /// <summary>Fits on the stations whose place in the list is used.</summary>
    public double[] Fit(double[] start, Func<int, bool> used, int searches, int stepsEach)
    {
        double[] found = [.. start];
        for (int search = 0; search < searches; search++)
        {
            double[] weights = Weights(found, used);
            found = Search(found, weights, stepsEach);
        }

        return found;
    }

    private double[] Search(double[] start, double[] weights, int steps)
    {
        double[] values = start;
        double cost = Cost(values, weights);
        double damping = 1e-4;
        for (int step = 0; step < steps; step++)
        {
            (Matrix<double> normal, Vector<double> gradient) = NormalEquations(values, weights);
            double[]? better = null;
            double lower = cost;
            for (int attempt = 0; attempt < DampingTries && better is null; attempt++)
            {
                double[] tried = Step(values, normal, gradient, damping);
                lower = Cost(tried, weights);
                if (lower < cost) better = tried;
                damping = better is null ? damping * 5 : Math.Max(damping / 5, 1e-8);
            }

            if (better is null) break;
            bool enough = (cost - lower) / cost < EnoughGain;
            (values, cost) = (better, lower);
            if (enough) break;
        }

        return values;
    }

    private double[] Step(double[] values, Matrix<double> normal, Vector<double> gradient, double damping)
    {
        Matrix<double> damped = normal + Matrix<double>.Build.DiagonalOfDiagonalVector(normal.Diagonal() * damping);
        Vector<double> change = damped.Cholesky().Solve(gradient);
        return [.. values.Select((value, k) => Math.Max(value - change[k], constants[k].Lowest))];
    }

    private double[] Weights(double[] values, Func<int, bool> used)
    {
        var weights = new double[stations.Count];
        for (int i = 0; i < weights.Length; i++)
        {
            if (!used(i) || measuredDays[i].Length == 0) continue;
            double[] residuals = Residuals(values, i);
            double error = Math.Sqrt(SumOfSquares(residuals) / residuals.Length);
            weights[i] = (stations[i].IsHumid ? 1 : DryWeight) / (1 + Math.Pow(error / DoubtedErrorC, 4));
        }

        return weights;
    }

    private double Cost(double[] values, double[] weights)
    {
        double cost = 0;
        for (int i = 0; i < weights.Length; i++)
        {
            if (weights[i] > 0) cost += weights[i] * SumOfSquares(Residuals(values, i));
        }

        for (int k = 0; k < values.Length; k++) cost += Pull(k) * Math.Pow(values[k] - constants[k].PriorMean, 2);
        return cost;
    }

    private (Matrix<double> Normal, Vector<double> Gradient) NormalEquations(double[] values, double[] weights)
    {
        int count = values.Length;
        Matrix<double> normal = Matrix<double>.Build.Dense(count, count);
        Vector<double> gradient = Vector<double>.Build.Dense(count);
        for (int i = 0; i < weights.Length; i++)
        {
            if (weights[i] > 0) AddStation(i, weights[i], values, normal, gradient);
        }

        for (int k = 0; k < count; k++)
        {
            normal[k, k] += Pull(k);
            gradient[k] += Pull(k) * (values[k] - constants[k].PriorMean);
        }

        return (normal, gradient);
    }

    private void AddStation(int station, double weight, double[] values, Matrix<double> normal, Vector<double> gradient)
    {
        double[] residuals = Residuals(values, station);
        var slopes = new double[values.Length][];
        for (int k = 0; k < values.Length; k++)
        {
            double step = Math.Max(Math.Abs(values[k]) * RelativeStep, SmallestStep);
            double[] moved = [.. values];
            moved[k] += step;
            slopes[k] = Residuals(moved, station);
            for (int day = 0; day < residuals.Length; day++) slopes[k][day] = (slopes[k][day] - residuals[day]) / step;
        }

        for (int k = 0; k < values.Length; k++)
        {
            gradient[k] += weight * Dot(slopes[k], residuals);
            for (int other = 0; other <= k; other++)
            {
                double product = weight * Dot(slopes[k], slopes[other]);
                normal[k, other] += product;
                if (other != k) normal[other, k] += product;
            }
        }
    }

    private double[] Residuals(double[] values, int station)
    {
        var estimate = new double[stations[station].Series.Count];
        simulate(values, stations[station], estimate);
        double[] measured = stations[station].MeasuredC[5];
        int[] days = measuredDays[station];
        var residuals = new double[days.Length];
        for (int n = 0; n < days.Length; n++)
        {
            double residual = estimate[days[n]] - measured[days[n]];
            residuals[n] = double.IsNaN(residual) ? 0 : residual;
        }

        return residuals;
    }

    private double Pull(int constant) => PriorStrength / (constants[constant].PriorScale * constants[constant].PriorScale);

    private static int[] MeasuredDays(MeasuredStation station) =>
        [.. Enumerable.Range(0, station.Series.Count).Where(day => !double.IsNaN(station.MeasuredC[5][day]))];

    private static double SumOfSquares(double[] values) => Dot(values, values);

    private static double Dot(double[] a, double[] b)
    {
        double sum = 0;
        for (int i = 0; i < a.Length; i++) sum += a[i] * b[i];
        return sum;
    }
}
