using System.Buffers.Binary;
using System.Runtime.InteropServices;
using System.Security.Cryptography;
using System.Text;
using GddWatch.Agronomy.Changes;
using GddWatch.Agronomy.Treatments;

namespace GddWatch.Notices.Composing;

/// <summary>What a calendar says of one window.</summary>
/// <param name="Uid">What makes it the same entry: site, treatment and season.</param>
/// <param name="Sequence">How often something was told of the window.</param>
/// <param name="First">Its first day.</param>
/// <param name="End">The day after its last.</param>
/// <param name="Summary">The line that a calendar shows.</param>
/// <param name="Description">The sentences under it.</param>
/// <param name="Location">The site.</param>
/// <param name="Category">The treatment.</param>
/// <param name="IsWithdrawn">Whether what was told of it was taken back.</param>
internal sealed record CalendarText(string Uid, int Sequence, DateOnly First, DateOnly End, string Summary, string Description, string Location, string Category, bool IsWithdrawn)
{
    /// <summary>What a calendar says of a notice's window; null where it has no entry.</summary>
    /// <param name="notice">The notice.</param>
    /// <param name="domain">The domain of the operator's address.</param>
    /// <param name="remark">The region's remark.</param>
    public static CalendarText? Of(Notice notice, string domain, string remark)
    {
        if (notice.Entry is not { } entry) return null;
        string site = OneLine.Of(notice.SiteName), treatment = OneLine.Of(notice.TreatmentName);
        return new CalendarText(
            $"{OneLine.Of(notice.Key.WindowId())}@{domain}", entry.Sequence, entry.First, entry.End, $"{site}: {treatment}{Suffix(notice, entry)}", DescriptionOf(notice, entry, remark), site, treatment, entry.IsWithdrawn);
    }

    /// <summary>The mark of what it says, SHA-256 over all of it: two texts have the same one where they say the same.</summary>
    public byte[] Mark()
    {
        using var mark = IncrementalHash.CreateHash(HashAlgorithmName.SHA256);
        Span<byte> length = stackalloc byte[sizeof(int)];
        foreach (string part in (ReadOnlySpan<string>)[Uid, Summary, Location, Category, Description, FormattableString.Invariant($"{First:O} {End:O} {Sequence} {IsWithdrawn}")])
        {
            BinaryPrimitives.WriteInt32LittleEndian(length, part.Length);
            mark.AppendData(length);
            mark.AppendData(MemoryMarshal.AsBytes(part.AsSpan()));
        }

        return mark.GetHashAndReset();
    }

    private static string Suffix(Notice notice, CalendarEntry entry) => notice.Key.Kind switch
    {
        _ when entry.IsWithdrawn => " (withdrawn)",
        NoticeKind.Closing => " (past its best)",
        NoticeKind.Closed => " (closed)",
        _ => "",
    };

    private static string DescriptionOf(Notice notice, CalendarEntry entry, string remark)
    {
        var text = new StringBuilder();
        Paragraph(text, "", [$"{OneLine.Of(notice.Headline).TrimEnd('.')}."]);
        Paragraph(text, "Why: ", [notice.Reason]);
        Paragraph(text, "End: ", [entry.EndWords]);
        Paragraph(text, "Do: ", notice.Do);
        Paragraph(text, "Do not: ", notice.DoNot);
        Paragraph(text, "Choose first: ", notice.Choices);
        Paragraph(text, "Take care: ", notice.Cautions);
        Paragraph(text, "About the data: ", notice.DataRemarks);
        Paragraph(text, "", ["This gives timing, not a prescription. The product's label is the law. Local codes, licences and watering rules come first.", remark]);
        return text.ToString().TrimEnd('\n');
    }

    private static void Paragraph(StringBuilder text, string label, IReadOnlyList<string> sentences)
    {
        IReadOnlyList<string> lines = OneLine.OfEach(sentences);
        if (lines.Count == 0) return;
        text.Append(label).AppendJoin(' ', lines).Append("\n\n");
    }
}
