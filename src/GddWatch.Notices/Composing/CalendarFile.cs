using System.Buffers.Binary;
using System.Runtime.InteropServices;
using System.Security.Cryptography;
using System.Text;
using GddWatch.Agronomy.Changes;
using GddWatch.Agronomy.Places;
using Ical.Net;
using Ical.Net.CalendarComponents;
using Ical.Net.DataTypes;
using Ical.Net.Serialization;

namespace GddWatch.Notices.Composing;

/// <summary>
/// Windows as entries of a calendar (RFC 5545). An entry's UID is made of site, treatment and season alone, and its SEQUENCE grows with all that is told of the window, so that what comes later
/// moves the entry and adds none. The same notices and the same instant give the same bytes.
/// </summary>
public static class CalendarFile
{
    /// <summary>The most that a line may have without its line break [octets]: RFC 5545, section 3.1 (SEEN).</summary>
    private const int LongestLineOctets = 75;

    private const string LineBreak = "\r\n";

    /// <summary>The windows of a mail, or null where none of its notices has an entry.</summary>
    /// <param name="message">The message.</param>
    /// <param name="queuedAt">When it was queued: the instant of the entries, whenever the mail is sent.</param>
    internal static byte[]? For(Message message, DateTimeOffset queuedAt)
    {
        if (message.Notices.All(notice => notice.Entry is null)) return null;
        Calendar calendar = Made(message.Notices, Domain(message.OperatorAddress), message.Remark, queuedAt);
        // RFC 5546, section 3.2.1: sent for information, nobody is asked to answer.
        calendar.Method = CalendarMethods.Publish;
        return Bytes(calendar);
    }

    /// <summary>A feed for calendar programs that ask for the file again and again.</summary>
    /// <param name="name">The name that the program shows.</param>
    /// <param name="notices">How each window stands.</param>
    /// <param name="region">Where they are.</param>
    /// <param name="asOf">The instant of the pass.</param>
    public static byte[] Feed(string name, IReadOnlyList<Notice> notices, Region region, DateTimeOffset asOf)
    {
        ArgumentNullException.ThrowIfNull(notices);
        ArgumentNullException.ThrowIfNull(region);
        Calendar calendar = Made(notices, Domain(region.OperatorAddress), region.Remark, asOf);
        string shown = OneLine.Of(name);
        // RFC 7986, sections 5.1 and 5.7; the first is how programs older than it read the name.
        calendar.AddProperty("X-WR-CALNAME", shown);
        calendar.AddProperty("NAME", shown);
        var refresh = new CalendarProperty("REFRESH-INTERVAL", "PT12H");
        refresh.AddParameter("VALUE", "DURATION");
        calendar.AddProperty(refresh);
        return Bytes(calendar);
    }

    /// <summary>
    /// The mark of what a feed says, without making it: two feeds have the same one where they say the same, whenever they are made. SHA-256 over all that its entries are made of.
    /// </summary>
    internal static byte[] MarkOf(string name, IReadOnlyList<Notice> notices, Region region)
    {
        using var mark = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        Append(name);
        string domain = Domain(region.OperatorAddress);
        foreach (CalendarText text in notices.Select(notice => CalendarText.Of(notice, domain, region.Remark)).OfType<CalendarText>())
        {
            Append(text.Uid);
            Append(text.Summary);
            Append(text.Location);
            Append(text.Category);
            Append(text.Description);
            Append(FormattableString.Invariant($"{text.First:O} {text.End:O} {text.Sequence} {text.IsWithdrawn}"));
        }

        return mark.GetHashAndReset();

        void Append(string part)
        {
            Span<byte> length = stackalloc byte[sizeof(int)];
            BinaryPrimitives.WriteInt32LittleEndian(length, part.Length);
            mark.AppendData(length);
            mark.AppendData(MemoryMarshal.AsBytes(part.AsSpan()));
        }
    }

    /// <summary>Whether two calendars say the same, whenever they were made.</summary>
    internal static bool SaysTheSame(ReadOnlySpan<byte> one, ReadOnlySpan<byte> other)
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

    private static Calendar Made(IReadOnlyList<Notice> notices, string domain, string remark, DateTimeOffset at)
    {
        var calendar = new Calendar { ProductId = "-//GddWatch//Windows of lawn tasks//EN" };
        foreach (Notice notice in notices)
        {
            if (CalendarText.Of(notice, domain, remark) is { } text) calendar.Events.Add(Event(text, at));
        }

        return calendar;
    }

    private static CalendarEvent Event(CalendarText text, DateTimeOffset at)
    {
        var made = new CalendarEvent
        {
            Uid = text.Uid,
            Sequence = text.Sequence,
            // Not the clock's: the same mail sent again is the same entry.
            DtStamp = new CalDateTime(DateTime.SpecifyKind(new DateTime(at.UtcTicks - (at.UtcTicks % TimeSpan.TicksPerSecond)), DateTimeKind.Utc), hasTime: true),
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

            folded.Append(rune.ToString());
        }

        return folded.ToString();
    }
}
