using GddWatch.Agronomy.Quantities;

namespace GddWatch.Agronomy.Soil;

/// <summary>The layers of <see cref="LayeredTurfSoil"/> on each day of a series, out of which each depth is read: their days are gone through once for all depths.</summary>
/// <param name="ShallowC">The shallow layer [°C]; NaN where it is not worth giving.</param>
/// <param name="MiddleLessShallowC">By how much the middle layer is warmer [°C]; counts only where the shallow layer is given.</param>
/// <param name="DeviationC">Standard deviation of the estimate [°C]; NaN where it is not worth giving.</param>
/// <param name="After">Where the soil stands at the end of the last day.</param>
internal sealed record TurfSoilColumns(double[] ShallowC, double[] MiddleLessShallowC, double[] DeviationC, TurfSoilStand After)
{
    /// <summary>The soil temperature at a depth, in columns of its own.</summary>
    /// <param name="depth">Depth, 2 to 20 cm.</param>
    /// <exception cref="ArgumentOutOfRangeException">The depth lies outside 2 to 20 cm.</exception>
    public SoilTemperatureColumns At(Depth depth)
    {
        double share = TurfSoilLayers.ShareOfMiddle(SoilDemand.DepthOfTurf(depth));
        var means = new double[ShallowC.Length];
        for (int i = 0; i < means.Length; i++) means[i] = ShallowC[i] + share * MiddleLessShallowC[i];
        return new SoilTemperatureColumns(means, [.. DeviationC]);
    }
}
