using GddWatch.Feeds.Faults;

namespace GddWatch.Feeds.Archives.Ghcn;

/// <summary>What was kept of one file by year: the stations that some site wants.</summary>
/// <param name="Stations">The wanted stations that the file holds, by id.</param>
/// <param name="Faults">What was wrong in the file as a whole, and in lines of which no station can be told.</param>
/// <param name="Others">Some of the stations that nobody wants.</param>
internal sealed record YearlyFile(IReadOnlyDictionary<string, GhcnStationDays> Stations, FaultList Faults, IReadOnlyCollection<string> Others);
