namespace GddWatch.Agronomy.Heat;

/// <summary>A heat sum on each day of a series, and what must be known to read it.</summary>
/// <param name="CelsiusDays">The sum at the end of each day [°C-days]; NaN where it is not known.</param>
/// <param name="Seasons">The years of the sum whose start date the series holds, in order.</param>
/// <param name="LastDayIsProvisional">Whether the last day's sum will change a little when the next day's minimum comes in.</param>
public sealed record HeatSums(double[] CelsiusDays, IReadOnlyList<HeatSumSeason> Seasons, bool LastDayIsProvisional)
{
    /// <summary>The year of the sum in which a day lies, or null before the first.</summary>
    public HeatSumSeason? SeasonOf(DateOnly day)
    {
        for (int i = Seasons.Count - 1; i >= 0; i--)
        {
            if (Seasons[i].Start <= day) return Seasons[i];
        }

        return null;
    }
}
