using System.Buffers;
using System.Text;
using System.Globalization;

namespace GddWatch.Notices.Composing;

/// <summary>Makes a name or a sentence that came from elsewhere fit for one line of a mail.</summary>
internal static class OneLine
{
    // What stays as it is: all that is printed, and the no-break space, of the first 256 characters.
    private static readonly SearchValues<char> Plain = SearchValues.Create([.. Enumerable.Range(0x20, 0x7F - 0x20).Concat(Enumerable.Range(0xA0, 0x100 - 0xA0)).Select(each => (char)each)]);

    /// <summary>
    /// The text on one line: line breaks and other control characters become spaces, runs of spaces become one, marks that turn the direction of writing are
    /// left out because they could make an address or a number read backwards, and broken characters are replaced.
    /// </summary>
    public static string Of(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        if (IsFitting(text)) return text;
        var line = new StringBuilder(text.Length);
        foreach (Rune rune in text.EnumerateRunes())
        {
            if (TurnsDirection(rune)) continue;
            if (!IsGap(rune))
            {
                line.Append(rune.ToString());
            }
            else if (line.Length > 0 && line[^1] != ' ')
            {
                line.Append(' ');
            }
        }
        return line.ToString().TrimEnd();
    }

    /// <summary>Whether nothing in it needs a look: most texts are so.</summary>
    private static bool IsFitting(string text) => text.Length > 0 && text[0] != ' ' && text[^1] != ' ' && !text.AsSpan().ContainsAnyExcept(Plain) && !text.Contains("  ", StringComparison.Ordinal);

    /// <summary>Every text of a list on its own line; those that say nothing are left out.</summary>
    public static IReadOnlyList<string> OfEach(IReadOnlyList<string> texts) => [.. texts.Select(Of).Where(text => text.Length > 0)];

    // A no-break space stays: it holds a number to its unit.
    private static bool IsGap(Rune rune) => rune.Value == ' ' || Rune.GetUnicodeCategory(rune)
        is UnicodeCategory.Control or UnicodeCategory.LineSeparator or UnicodeCategory.ParagraphSeparator;

    private static bool TurnsDirection(Rune rune) => rune.Value is (>= 0x202A and <= 0x202E) or (>= 0x2066 and <= 0x2069) or 0x200E or 0x200F;
}
