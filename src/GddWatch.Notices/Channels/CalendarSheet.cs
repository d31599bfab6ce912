using GddWatch.Notices.Composing;

namespace GddWatch.Notices.Channels;

/// <summary>What one calendar says.</summary>
/// <param name="File">The name of its file, without its ending.</param>
/// <param name="Name">What the calendar is called.</param>
/// <param name="Entries">Its entries.</param>
public sealed record CalendarSheet(string File, string Name, IReadOnlyList<WrittenEntry> Entries);
