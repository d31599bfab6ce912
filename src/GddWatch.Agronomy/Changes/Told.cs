namespace GddWatch.Agronomy.Changes;

/// <summary>What a person was last told about one change of one window.</summary>
/// <param name="Day">The day whose judging told it.</param>
/// <param name="Fact">The day on which, by what was told, the change came by the weather; null where a correction said that it had not come.</param>
/// <param name="Configuration">The fingerprint of the configuration under which it was told.</param>
/// <param name="Revision">How often it had been corrected by then; 0 for what was told first.</param>
public sealed record Told(DateOnly Day, DateOnly? Fact, string Configuration, int Revision);
