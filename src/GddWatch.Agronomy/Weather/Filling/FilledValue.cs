namespace GddWatch.Agronomy.Weather.Filling;

/// <summary>One temperature that was missing and was filled.</summary>
/// <param name="Day">The day that lacked it.</param>
/// <param name="Variable">The lowest or the highest air temperature.</param>
/// <param name="ValueC">What was put in [°C].</param>
/// <param name="Rung">By which means.</param>
/// <param name="ErrorC">Its standard deviation from what would have been measured [°C].</param>
/// <param name="KnownFrom">The first day as of which it is the best that is known.</param>
/// <param name="ReplacedOn">The day as of which a better one takes its place; null where it stands for good.</param>
public sealed record FilledValue(
    DateOnly Day, WeatherVariable Variable, double ValueC, FillingRung Rung, double ErrorC, DateOnly KnownFrom, DateOnly? ReplacedOn);
