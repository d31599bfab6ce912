using System.Diagnostics.CodeAnalysis;
using MimeKit;

namespace GddWatch.Notices;

/// <summary>Reads a text that must be one bare mail address: no name, no list, no line break.</summary>
internal static class OneAddress
{
    /// <summary>Whether it is one; what would parse as a name with an address must not smuggle the name in.</summary>
    public static bool TryRead(string text, [NotNullWhen(true)] out MailboxAddress? address)
    {
        address = null;
        if (text.Any(char.IsControl) || !MailboxAddress.TryParse(text, out MailboxAddress? parsed)) return false;
        if (parsed.Address != text || !text.Contains('@', StringComparison.Ordinal)) return false;
        address = parsed;
        return true;
    }
}
