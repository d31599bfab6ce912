namespace GddWatch.InventedWeather;

/// <summary>One invented day, rounded as it is written: tenths of a degree Celsius, tenths of a millimetre; 0 mm is a dry day.</summary>
public sealed record InventedDay(DateOnly Date, double MinimumC, double MaximumC, double RainMm);
