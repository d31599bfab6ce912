namespace GddWatch.Agronomy.Tests.Soil;

/// <summary>Errors of an estimate, estimated minus measured, gathered over days and stations.</summary>
internal sealed class SoilErrors
{
    /// <summary>The standard normal's 90 % point: so many deviations either way make an 80 % range.</summary>
    private const double EightyPercent = 1.2816;

    private double sum;
    private double squares;
    private int inRange;

    public int Days { get; private set; }

    public double RootMeanSquareC => Math.Sqrt(squares / Days);

    public double BiasC => sum / Days;

    public double ShareInRange => inRange / (double)Days;

    public void Add(double estimateC, double deviationC, double measuredC)
    {
        double error = estimateC - measuredC;
        if (double.IsNaN(error)) return;
        Days++;
        sum += error;
        squares += error * error;
        if (Math.Abs(error) <= EightyPercent * deviationC) inRange++;
    }

    public override string ToString() => $"RMSE {RootMeanSquareC:F3}, bias {BiasC:F3}, in the 80 % range {ShareInRange:P1}, {Days} days";
}
