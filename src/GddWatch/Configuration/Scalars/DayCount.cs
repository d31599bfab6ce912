namespace GddWatch.Configuration.Scalars;

/// <summary>A number of days, at least one [days].</summary>
public readonly record struct DayCount(int Days);
