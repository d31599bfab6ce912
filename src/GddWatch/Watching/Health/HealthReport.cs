namespace GddWatch.Watching.Health;

/// <summary>Whether the service is well, for whoever looks after it.</summary>
/// <param name="IsWell">Whether it is.</param>
/// <param name="Words">What is to be said about it, in a sentence.</param>
internal sealed record HealthReport(bool IsWell, string Words);
