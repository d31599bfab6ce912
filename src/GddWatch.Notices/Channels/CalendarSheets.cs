namespace GddWatch.Notices.Channels;

/// <summary>What the calendars of a region say, ready to be written.</summary>
/// <param name="All">A sheet a file; none of a site that keeps the file it has.</param>
/// <param name="Files">The names of all files that there may be, without their ending.</param>
/// <param name="Failures">Which could not be made, a sentence each; they keep the files that they have.</param>
public sealed record CalendarSheets(IReadOnlyList<CalendarSheet> All, IReadOnlyCollection<string> Files, IReadOnlyList<string> Failures);
