using GddWatch.Agronomy.Quantities;

namespace GddWatch.Agronomy.Heat;

/// <summary>
/// A biofix that the weather sets: from the start date on, the heat sum stands at zero until the first day on which the mean air temperature of the last
/// days is at or above a value, and that day is the first to be counted. The mean may reach back before the start date. A day's air temperature is here the
/// middle of its extremes.
/// </summary>
public sealed record BiofixCondition
{
    /// <summary>A biofix by the mean of the last days.</summary>
    /// <param name="meanDays">Over how many days the mean is taken, the day itself included [days], 1 or more.</param>
    /// <param name="passes">The temperature that the mean must be at or above.</param>
    /// <exception cref="ArgumentOutOfRangeException">Fewer than one day.</exception>
    public BiofixCondition(int meanDays, Temperature passes)
    {
        MeanDays = Demand.AtLeast(meanDays, 1, "days of the biofix's running mean [days]");
        Passes = passes;
    }

    /// <summary>Over how many days the mean is taken, the day itself included [days].</summary>
    public int MeanDays { get; }

    /// <summary>The temperature that the mean must be at or above.</summary>
    public Temperature Passes { get; }
}
