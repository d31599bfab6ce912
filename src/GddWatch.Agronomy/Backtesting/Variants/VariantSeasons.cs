namespace GddWatch.Agronomy.Backtesting.Variants;

/// <summary>The past seasons of one variant of a treatment.</summary>
/// <param name="Treatment">The treatment's id.</param>
/// <param name="Variations">What was varied; empty for the treatment as it is.</param>
/// <param name="Seasons">The seasons.</param>
public sealed record VariantSeasons(string Treatment, IReadOnlyList<Variation> Variations, IReadOnlyList<SeasonDates> Seasons);
