namespace GddWatch.Agronomy.Treatments.Conditions;

/// <summary>How long something must be so before it counts, so that a short spell does not.</summary>
/// <param name="Days">On how many days [days].</param>
/// <param name="OfDays">Of how many last days, today included [days]; equal to <paramref name="Days"/> for days in a row.</param>
public readonly record struct Holding(int Days, int OfDays);
