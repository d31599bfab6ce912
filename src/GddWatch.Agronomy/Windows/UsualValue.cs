namespace GddWatch.Agronomy.Windows;

/// <summary>What is usual at a site, from earlier years only, and where that is known from.</summary>
/// <param name="Value">The value; null where it is not known.</param>
/// <param name="Source">Where it comes from, in words such as "median of 12 earlier years".</param>
/// <param name="IsFallback">Whether it is a stated fallback rather than the site's own past.</param>
public readonly record struct UsualValue(double? Value, string Source, bool IsFallback = false);
