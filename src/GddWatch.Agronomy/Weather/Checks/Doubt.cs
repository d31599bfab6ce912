namespace GddWatch.Agronomy.Weather.Checks;

/// <summary>One value that a check doubts, and from when to when.</summary>
/// <param name="Day">The day of the value.</param>
/// <param name="Variable">The variable: the minimum or the maximum of the air temperature.</param>
/// <param name="Value">The value as it was read [°C].</param>
/// <param name="Check">The check that doubts it.</param>
/// <param name="KnownFrom">The first day on which the doubt can be known; never before the value's day.</param>
/// <param name="ClearedOn">The first day on which the doubt no longer holds; null where it stays.</param>
/// <param name="Why">The reason, a sentence for people.</param>
public sealed record Doubt(DateOnly Day, WeatherVariable Variable, double Value, QualityCheck Check, DateOnly KnownFrom, DateOnly? ClearedOn, string Why)
{
    /// <summary>Whether the value is doubted as of a day.</summary>
    public bool HoldsOn(DateOnly day) => KnownFrom <= day && (ClearedOn is null || day < ClearedOn);
}
