using System.Text;

namespace GddWatch.Notices.Composing;

/// <summary>The way to stop the mails: a letter to the operator.</summary>
internal static class StopRequest
{
    /// <summary>The link stands in a line of the mail's head, which cannot be folded within it and holds 998 octets at most (RFC 5322).</summary>
    private const int LongestSubject = 600;

    /// <summary>A mailto link (RFC 6068) to the operator with the subject filled in; ASCII alone, so that it fits a header and an attribute.</summary>
    public static string Link(string operatorAddress, string region)
    {
        string address = OneLine.Of(operatorAddress);
        int at = address.LastIndexOf('@');
        string to = at < 0 ? Uri.EscapeDataString(address) : $"{Uri.EscapeDataString(address[..at])}@{Uri.EscapeDataString(address[(at + 1)..])}";
        return $"mailto:{to}?subject={Subject(OneLine.Of(region))}";
    }

    private static string Subject(string region)
    {
        var subject = new StringBuilder(Uri.EscapeDataString("unsubscribe "));
        foreach (Rune letter in region.EnumerateRunes())
        {
            string escaped = Uri.EscapeDataString(letter.ToString());
            if (subject.Length + escaped.Length > LongestSubject) break;
            subject.Append(escaped);
        }

        return subject.ToString();
    }
}
