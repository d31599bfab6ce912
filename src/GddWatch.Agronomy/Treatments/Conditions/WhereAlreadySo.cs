using GddWatch.Agronomy.Quantities;

namespace GddWatch.Agronomy.Treatments.Conditions;

/// <summary>
/// The rule for soil that is past the threshold when the season starts, as it is in mild winters: the crossing then counts, but not earlier than
/// some days before the site's usual date of another threshold. Source: science reference 3.1, suggested rule (design).
/// </summary>
/// <param name="DaysBeforeUsual">How long before the usual date [days].</param>
/// <param name="UsualThreshold">The soil temperature whose usual date is meant, same depth, mean and holding.</param>
/// <param name="Fallback">The usual date, written for the north, where the site has fewer than ten earlier seasons.</param>
/// <param name="StartDays">A passage within so many days from the season's start counts as already so [days].</param>
public sealed record WhereAlreadySo(int DaysBeforeUsual, Temperature UsualThreshold, AnnualDay Fallback, int StartDays);
