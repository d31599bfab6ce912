using GddWatch.Agronomy.Quantities;

namespace GddWatch.Agronomy.Heat;

/// <summary>
/// All that a heat sum depends on. Two sums may be compared only where their definitions are equal: the same spring reaches the same figure up to two
/// weeks apart under different methods.
/// </summary>
/// <param name="Base">The temperature below which nothing develops.</param>
/// <param name="Upper">The temperature above which the cutoff acts; null is no upper threshold.</param>
/// <param name="Method">How a day's heat is reckoned.</param>
/// <param name="Cutoff">What happens above the upper threshold.</param>
/// <param name="Start">The day on which the sum starts from zero each year (the biofix), written for the north; half a year on in the south.</param>
/// <param name="SoilDepth">The depth of the soil whose daily mean is summed; null sums the air.</param>
public sealed record HeatSumDefinition(
    Temperature Base, Temperature? Upper, DegreeDayMethod Method, DegreeDayCutoff Cutoff, AnnualDay Start, Depth? SoilDepth = null);
