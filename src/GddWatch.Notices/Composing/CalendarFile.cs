using System.Text;
using GddWatch.Agronomy.Changes;
using Ical.Net;
using Ical.Net.CalendarComponents;
using Ical.Net.DataTypes;
using Ical.Net.Serialization;

namespace GddWatch.Notices.Composing;

/// <summary>
/// Windows as entries of a calendar (RFC 5545). An entry's UID is made of site, treatment and season alone, and its SEQUENCE grows with all that is told of the window, so that what comes later
/// moves the entry and adds none. The same notices and the same instant give the same bytes.
/// </summary>
internal static class CalendarFile
{
    /// <summary>The most that a line may have without its line break [octets]: RFC 5545, section 3.1 (SEEN).</summary>
    private const int LongestLineOctets = 75;

    private const string LineBreak = "\r\n";

    /// <summary>The instant in an entry that no calendar holds yet.</summary>
    private static readonly DateTimeOffset NoInstant = DateTimeOffset.UnixEpoch;

    /// <summary>The windows of a mail, or null where none of its notices has an entry.</summary>
    /// <param name="message">The message.</param>
    /// <param name="queuedAt">When it was queued: the instant of the entries, whenever the mail is sent.</param>
    public static byte[]? For(Message message, DateTimeOffset queuedAt)
    {
        if (message.Notices.All(notice => notice.Entry is null)) return null;
        // RFC 5546, section 3.2.1: sent for information, nobody is asked to answer.
        Calendar calendar = Empty();
        calendar.Method = CalendarMethods.Publish;
        return With([.. TextsOf(message.Notices, message.OperatorAddress, message.Remark).Select(WrittenEntry.Of)], calendar, queuedAt);
    }

    /// <summary>A feed for calendar programs that ask for the file again and again.</summary>
    /// <param name="name">The name that the program shows.</param>
    /// <param name="entries">How each window stands.</param>
    /// <param name="asOf">The instant of the pass.</param>
    public static byte[] Feed(string name, IReadOnlyList<WrittenEntry> entries, DateTimeOffset asOf)
    {
        Calendar calendar = Empty();
        string shown = OneLine.Of(name);
        // RFC 7986, sections 5.1 and 5.7; the first is how programs older than it read the name.
        calendar.AddProperty("X-WR-CALNAME", shown);
        calendar.AddProperty("NAME", shown);
        var refresh = new CalendarProperty("REFRESH-INTERVAL", "PT12H");
        refresh.AddParameter("VALUE", "DURATION");
        calendar.AddProperty(refresh);
        return With(entries, calendar, asOf);
    }

    /// <summary>What a calendar says of the windows of notices; those without an entry are left out.</summary>
    /// <param name="notices">The notices.</param>
    /// <param name="operatorAddress">The operator's address.</param>
    /// <param name="remark">The region's remark.</param>
    public static IEnumerable<CalendarText> TextsOf(IEnumerable<Notice> notices, string operatorAddress, string remark)
    {
        string domain = Domain(operatorAddress);
        return notices.Select(notice => CalendarText.Of(notice, domain, remark)).OfType<CalendarText>();
    }

    /// <summary>An entry by itself, and the place of its instant.</summary>
    public static (byte[] Bytes, int InstantAt) EntryOf(CalendarText text)
    {
        var calendar = new Calendar();
        calendar.Events.Add(Event(text));
        ReadOnlySpan<byte> all = Bytes(calendar);
        int from = all.IndexOf("BEGIN:VEVENT\r\n"u8);
        byte[] entry = all[from..all.LastIndexOf("END:VCALENDAR\r\n"u8)].ToArray();
        // A line of the text that begins so would be folded, or have its colon after other words.
        return (entry, entry.AsSpan().IndexOf(Encoding.ASCII.GetBytes($"\nDTSTAMP:{InstantText(NoInstant)}\r")) + "\nDTSTAMP:".Length);
    }

    /// <summary>Whether two calendars say the same, whenever they were made.</summary>
    public static bool SaysTheSame(ReadOnlySpan<byte> one, ReadOnlySpan<byte> other)
    {
        while (one.Length > 0 && other.Length > 0)
        {
            ReadOnlySpan<byte> line = LineAt(one), otherLine = LineAt(other);
            if (!line.SequenceEqual(otherLine) && !(line.StartsWith("DTSTAMP:"u8) && otherLine.StartsWith("DTSTAMP:"u8))) return false;
            one = one[line.Length..];
            other = other[otherLine.Length..];
        }

        return one.Length == other.Length;
    }

    private static ReadOnlySpan<byte> LineAt(ReadOnlySpan<byte> text) => text.IndexOf((byte)'\n') is >= 0 and var end ? text[..(end + 1)] : text;

    private static Calendar Empty() => new() { ProductId = "-//GddWatch//Windows of lawn tasks//EN" };

    private static byte[] With(IReadOnlyList<WrittenEntry> entries, Calendar calendar, DateTimeOffset at)
    {
        ReadOnlySpan<byte> empty = Bytes(calendar);
        int end = empty.LastIndexOf("END:VCALENDAR\r\n"u8);
        byte[] instant = Encoding.ASCII.GetBytes(InstantText(at));
        byte[] whole = new byte[empty.Length + entries.Sum(entry => entry.Bytes.Length)];
        empty[..end].CopyTo(whole);
        int place = end;
        foreach (WrittenEntry entry in entries)
        {
            entry.Bytes.CopyTo(whole, place);
            instant.CopyTo(whole, place + entry.InstantAt);
            place += entry.Bytes.Length;
        }

        empty[end..].CopyTo(whole.AsSpan(place));
        return whole;
    }

    /// <summary>An instant to the second, as RFC 5545, section 3.3.5 writes it. Not the clock's: the same mail sent again is the same entry.</summary>
    private static string InstantText(DateTimeOffset at) => at.UtcDateTime.ToString("yyyyMMdd'T'HHmmss'Z'", System.Globalization.CultureInfo.InvariantCulture);

    private static CalendarEvent Event(CalendarText text)
    {
        var made = new CalendarEvent
        {
            Uid = text.Uid,
            Sequence = text.Sequence,
            DtStamp = new CalDateTime(NoInstant.UtcDateTime, hasTime: true),
            DtStart = new CalDateTime(text.First),
            DtEnd = new CalDateTime(text.End),
            Summary = text.Summary,
            Description = text.Description,
            Location = text.Location,
            Status = text.IsWithdrawn ? EventStatus.Cancelled : EventStatus.Confirmed,
            // A window keeps nobody busy.
            Transparency = TransparencyType.Transparent,
        };
        made.Categories.Add("Lawn");
        made.Categories.Add(text.Category);
        return made;
    }

    private static string Domain(string operatorAddress) => OneLine.Of(operatorAddress[(operatorAddress.LastIndexOf('@') + 1)..]);

    private static byte[] Bytes(Calendar calendar)
    {
        string text = new CalendarSerializer().SerializeToString(calendar) ?? throw new InvalidOperationException("The calendar could not be written.");
        return Encoding.UTF8.GetBytes(Folded(text));
    }

    /// <summary>
    /// The library folds between the two halves of a character beyond the first plane (an emoji in a name), which then cannot be written as UTF-8: folded anew, between whole characters.
    /// </summary>
    private static string Folded(string text)
    {
        var folded = new StringBuilder(text.Length + (text.Length / 8));
        int octets = 0;
        Span<char> chars = stackalloc char[2];
        foreach (Rune rune in text.Replace($"{LineBreak} ", "", StringComparison.Ordinal).EnumerateRunes())
        {
            if (rune.Value is '\r' or '\n')
            {
                octets = 0;
            }
            else if (octets + rune.Utf8SequenceLength > LongestLineOctets)
            {
                folded.Append(LineBreak).Append(' ');
                octets = 1 + rune.Utf8SequenceLength;
            }
            else
            {
                octets += rune.Utf8SequenceLength;
            }

            folded.Append(chars[..rune.EncodeToUtf16(chars)]);
        }

        return folded.ToString();
    }
}
