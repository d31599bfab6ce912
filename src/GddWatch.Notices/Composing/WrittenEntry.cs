namespace GddWatch.Notices.Composing;

/// <summary>An entry of a calendar as it is written, but for its instant.</summary>
/// <param name="Mark">The mark of what it says.</param>
/// <param name="Bytes">Its lines.</param>
/// <param name="InstantAt">Where in them its instant stands.</param>
public sealed record WrittenEntry(byte[] Mark, byte[] Bytes, int InstantAt)
{
    /// <summary>What is said of a window, written.</summary>
    internal static WrittenEntry Of(CalendarText text)
    {
        (byte[] bytes, int instantAt) = CalendarFile.EntryOf(text);
        return new WrittenEntry(text.Mark(), bytes, instantAt);
    }
}
