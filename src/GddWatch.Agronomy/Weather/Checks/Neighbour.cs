namespace GddWatch.Agronomy.Weather.Checks;

/// <summary>One variable of a place nearby, addressed by the places of the checked series.</summary>
internal sealed class Neighbour
{
    private readonly double[] values;
    private readonly int offset;

    public Neighbour(DailySeries neighbour, WeatherVariable variable, DateOnly firstDay)
    {
        values = neighbour.Column(variable).ToArray();
        offset = neighbour.IndexOf(firstDay);
        ReadOnlySpan<Mark> marks = variable == WeatherVariable.MinimumAirC ? neighbour.MinimumMarks : neighbour.MaximumMarks;
        for (int i = 0; i < values.Length; i++)
        {
            // What was filled may have come from the very site that is checked.
            if (marks[i] is Mark.Filled or Mark.Forecast or Mark.Suspect) values[i] = double.NaN;
        }
    }

    public double At(int index) => (uint)(index + offset) < (uint)values.Length ? values[index + offset] : double.NaN;

    /// <summary>The value among the day before, the day and the day after that lies nearest; days after today are not looked at.</summary>
    public double NearestTo(double valueC, int index, int today)
    {
        double nearestC = double.NaN;
        for (int i = index - 1; i <= Math.Min(index + 1, today); i++)
        {
            double candidateC = At(i);
            if (!double.IsNaN(candidateC) && !(Math.Abs(nearestC - valueC) <= Math.Abs(candidateC - valueC))) nearestC = candidateC;
        }

        return nearestC;
    }
}
