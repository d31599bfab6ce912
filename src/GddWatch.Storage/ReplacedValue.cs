using GddWatch.Agronomy.Weather;

namespace GddWatch.Storage;

/// <summary>A value that stood until its source changed it.</summary>
/// <param name="Feed">The feed.</param>
/// <param name="Day">The day.</param>
/// <param name="Variable">The variable.</param>
/// <param name="Value">What stood, in the variable's unit.</param>
/// <param name="SeenAt">When it was first seen.</param>
/// <param name="ReplacedAt">When the other one was seen.</param>
public sealed record ReplacedValue(string Feed, DateOnly Day, WeatherVariable Variable, double Value, DateTimeOffset SeenAt, DateTimeOffset ReplacedAt);
