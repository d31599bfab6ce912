using System.Collections.Concurrent;

namespace GddWatch.Notices.Composing;

/// <summary>The entries that calendars are made of: one that says what it said the day before is not written anew.</summary>
internal sealed class WrittenEntries
{
    private ConcurrentDictionary<string, WrittenEntry> before = new(StringComparer.Ordinal);
    private ConcurrentDictionary<string, WrittenEntry> now = new(StringComparer.Ordinal);

    /// <summary>What is said of a window, written; the same object as the day before where it says the same. May be asked from several threads.</summary>
    public WrittenEntry Of(CalendarText text)
    {
        byte[] mark = text.Mark();
        // Where a day was broken off and is done again it is the same object too.
        if (now.TryGetValue(text.Uid, out WrittenEntry? made) && made.Mark.AsSpan().SequenceEqual(mark)) return made;
        WrittenEntry entry = before.TryGetValue(text.Uid, out WrittenEntry? known) && known.Mark.AsSpan().SequenceEqual(mark) ? known : WrittenEntry.Of(text);
        now[text.Uid] = entry;
        return entry;
    }

    /// <summary>Ends the day: what nobody asked for on it is forgotten.</summary>
    public void NextDay() => (before, now) = (now, new ConcurrentDictionary<string, WrittenEntry>(StringComparer.Ordinal));
}
