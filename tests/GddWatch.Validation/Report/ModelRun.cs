using GddWatch.Validation.Scoring;

namespace GddWatch.Validation.Report;

/// <summary>A model's estimate at 5 cm at every station.</summary>
/// <param name="Name">As the report shows it.</param>
/// <param name="Chosen">Whether it is the default.</param>
/// <param name="Estimate">One column a station.</param>
internal sealed record ModelRun(string Name, bool Chosen, SoilEstimate Estimate);
