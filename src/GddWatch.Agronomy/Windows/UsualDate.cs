namespace GddWatch.Agronomy.Windows;

/// <summary>When something usually comes, from earlier seasons only, and where that is known from.</summary>
/// <param name="Day">The date in the season asked about; null where it is not known or does not come.</param>
/// <param name="Never">Whether it comes too rarely to have a usual date.</param>
/// <param name="Source">Where it comes from, in words such as "median of 12 earlier seasons".</param>
/// <param name="IsFallback">Whether it is a stated fallback rather than the site's own past.</param>
public readonly record struct UsualDate(DateOnly? Day, bool Never, string Source, bool IsFallback = false);
