namespace GddWatch.Agronomy.Weather.Checks;

/// <summary>The finding of <see cref="TemperatureUnitCheck"/> with the month that shows it most clearly.</summary>
/// <param name="Finding">What was found.</param>
/// <param name="Month">The month of the year, 1 to 12, that lies furthest outside as stated; with none outside, the warmest; 0 where the file is too short.</param>
/// <param name="Days">How many days of that month were judged, over all years [days].</param>
/// <param name="AsStatedC">The median of that month's daily means as stated [°C].</param>
/// <param name="AsOtherUnitC">The same median if the numbers were in the other unit [°C].</param>
/// <param name="LowestC">The coldest that such a month is taken to be at that place [°C].</param>
/// <param name="HighestC">The warmest that such a month is taken to be at that place [°C].</param>
public sealed record TemperatureUnitVerdict(
    TemperatureUnitFinding Finding, int Month, int Days, double AsStatedC, double AsOtherUnitC, double LowestC, double HighestC);
