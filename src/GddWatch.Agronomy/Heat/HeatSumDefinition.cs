using GddWatch.Agronomy.Quantities;

namespace GddWatch.Agronomy.Heat;

/// <summary>
/// All that a heat sum depends on. Two sums may be compared only where their definitions are equal: the same spring reaches the same figure up to two
/// weeks apart under different methods.
/// </summary>
/// <param name="Base">The temperature below which nothing develops.</param>
/// <param name="Upper">The temperature above which the cutoff acts; null is no upper threshold. One that is not above the base is refused by
/// <see cref="HeatSum"/>, so that whoever reads a configuration can first collect all its faults.</param>
/// <param name="Method">How a day's heat is reckoned.</param>
/// <param name="Cutoff">What happens above the upper threshold; without one it has nothing to act on.</param>
/// <param name="Start">The day on which the sum starts from zero each year (the biofix), written for the north; half a year on in the south.</param>
/// <param name="SoilDepth">The depth of the soil whose daily mean is summed; null sums the air.</param>
/// <param name="Biofix">What the weather must do after the start date before heat counts; null counts from the start date itself.</param>
public sealed record HeatSumDefinition(
    Temperature Base,
    Temperature? Upper,
    DegreeDayMethod Method,
    DegreeDayCutoff Cutoff,
    AnnualDay Start,
    Depth? SoilDepth = null,
    BiofixCondition? Biofix = null);
