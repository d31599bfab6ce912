namespace GddWatch.Agronomy.Treatments;

/// <summary>How long a recorded treatment holds another. It ends with whichever comes first of what is given here.</summary>
/// <param name="LongestDays">The longest usual interval [days], after which it ends in any case.</param>
/// <param name="LabelDateDecides">Whether the record's date from the product's label, where there is one, stands in for the longest interval.</param>
/// <param name="Mowings">After how many mowings recorded since it ends; null where mowings do not end it.</param>
public sealed record HoldRule(int LongestDays, bool LabelDateDecides = false, int? Mowings = null);
