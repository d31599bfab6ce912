namespace GddWatch.Storage.Upkeep;

/// <summary>What looking through everything brought to light.</summary>
/// <param name="Findings">What cannot be as it should, a sentence each; empty where all is well.</param>
/// <param name="Windows">How many windows were looked at.</param>
/// <param name="Notices">How many notices that were told.</param>
/// <param name="Messages">How many messages.</param>
/// <param name="Entries">How many entries of the journal.</param>
/// <param name="Values">How many values of days.</param>
/// <param name="Forecasts">How many values of forecasts.</param>
public sealed record InspectionReport(IReadOnlyList<string> Findings, int Windows, int Notices, int Messages, int Entries, long Values, long Forecasts);
