namespace GddWatch.Agronomy.Backtesting.Fitting;

/// <summary>A model fitted to observed dates.</summary>
/// <param name="Model">The model.</param>
/// <param name="Events">The events that it was fitted to.</param>
/// <param name="LeftOut">Events that could not be used: their season has a hole or is not whole, or they lie outside it.</param>
/// <param name="ByCriterion">What each criterion chose, least error in days first.</param>
/// <param name="Flat">How flat the optimum of the least error in days is.</param>
/// <param name="ClosedForm">The base temperatures of the published closed formulae; null where the model is no heat sum, or a formula gives no number.</param>
/// <param name="MeanDate">The mean date beside it.</param>
/// <param name="NearerThanMeanDate">By how many days it is nearer than the mean date in years left out, with its paired interval; null where there is none.</param>
public sealed record DateFit(
    DateModel Model,
    IReadOnlyList<FitEvent> Events,
    IReadOnlyList<FitEvent> LeftOut,
    IReadOnlyList<FittedDates> ByCriterion,
    FlatOptimum Flat,
    YangLoganCoffey? ClosedForm,
    MeanDate MeanDate,
    ConfidenceInterval? NearerThanMeanDate)
{
    /// <summary>Fewer years than this are not fitted: two constants and a year left out ask for more than a handful (DESIGN).</summary>
    public const int FewestYears = 6;

    /// <summary>The fit by the least error in days.</summary>
    public FittedDates Best => ByCriterion[0];

    /// <summary>How many years it rests on.</summary>
    public int Years => Events.Select(each => each.Season.Year).Distinct().Count();

    /// <summary>How many sites it rests on.</summary>
    public int Sites => Events.Select(each => each.Site).Distinct(StringComparer.Ordinal).Count();
}
