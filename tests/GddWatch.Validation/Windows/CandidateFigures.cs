using MathNet.Numerics.Statistics;

namespace GddWatch.Validation.Windows;

/// <summary>The figures of a candidate.</summary>
/// <param name="Openings">How far apart they open.</param>
/// <param name="BySoil">Seasons compared in which the soil had a say in the day.</param>
/// <param name="MeanBySoil">The mean of those [days].</param>
/// <param name="LaterThanBefore">By how much it opens later than before in the median season [days].</param>
/// <param name="AheadByEstimate">How long before crabgrass, by the estimate's openings.</param>
/// <param name="AheadByMeasurement">The same by the measurement's.</param>
internal sealed record CandidateFigures(
    OpeningFigures Openings, int BySoil, double MeanBySoil, double LaterThanBefore, AheadOfCrabgrass AheadByEstimate, AheadOfCrabgrass AheadByMeasurement)
{
    /// <summary>Openings after a week at 55 °F in spring, by either soil.</summary>
    public int LateInSpring =>
        AheadByEstimate.AfterAWeekAt55 - AheadByEstimate.OfThemInWinter + AheadByMeasurement.AfterAWeekAt55 - AheadByMeasurement.OfThemInWinter;

    /// <summary>Days from the opening to a week at 55 °F in the median.</summary>
    public double Lead => AheadByEstimate.DaysToSoilAt55.Length == 0 ? double.NaN : AheadByEstimate.DaysToSoilAt55.Median();
}
