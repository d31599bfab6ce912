namespace GddWatch.Benchmarks.ByYear;

/// <summary>What every reader must find in the file: unflagged values of the three elements, and their sums in tenths.</summary>
internal readonly record struct YearlySums(long Values, long MaximumTenths, long MinimumTenths, long PrecipitationTenths);
