namespace GddWatch.Agronomy.Weather.Checks;

/// <summary>One variable of a place nearby, addressed by the places of the checked series.</summary>
internal sealed class Neighbour(DailySeries neighbour, WeatherVariable variable, DateOnly firstDay)
{
    private readonly int offset = neighbour.IndexOf(firstDay);

    public double At(int index)
    {
        ReadOnlySpan<double> values = neighbour.Column(variable);
        int place = index + offset;
        // What was filled may have come from the very site that is checked.
        return (uint)place < (uint)values.Length && neighbour.MarkAt(variable, place) is not (Mark.Filled or Mark.Forecast or Mark.Suspect) ? values[place] : double.NaN;
    }

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
