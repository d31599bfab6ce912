namespace GddWatch.Agronomy.Weather.Filling;

/// <summary>What a rung offers for a missing temperature.</summary>
/// <param name="Rung">The rung.</param>
/// <param name="ValueC">The temperature [°C].</param>
/// <param name="ErrorC">Its standard deviation [°C].</param>
internal readonly record struct Offer(FillingRung Rung, double ValueC, double ErrorC);
