namespace GddWatch.Storage.Upkeep;

/// <summary>What was taken out, or would be.</summary>
/// <param name="Messages">Messages that were delivered or refused for good.</param>
/// <param name="Notices">What they told whom.</param>
/// <param name="ForecastValues">Values of forecasts.</param>
/// <param name="ReplacedValues">Values of days that their source has changed since.</param>
public sealed record Pruned(int Messages, int Notices, int ForecastValues, int ReplacedValues);
