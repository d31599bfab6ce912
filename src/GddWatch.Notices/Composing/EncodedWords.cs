using System.Text;

namespace GddWatch.Notices.Composing;

/// <summary>
/// Text of a header that is not plain ASCII, as encoded words (RFC 2047, SEEN: at most 75 letters each, no letter of the text split between two). The mail library counts letters where it should
/// count bytes, and writes words of up to 124 letters for Greek or Cyrillic, or accents in a row.
/// </summary>
internal static class EncodedWords
{
    /// <summary>Sixty letters of base64, and twelve around them.</summary>
    private const int BytesOfAWord = 45;

    /// <summary>The words, each on a line of its own.</summary>
    public static string Of(string text)
    {
        var words = new List<string>();
        var word = new List<byte>();
        Span<byte> letter = stackalloc byte[4];
        foreach (Rune rune in text.EnumerateRunes())
        {
            int length = rune.EncodeToUtf8(letter);
            if (word.Count + length > BytesOfAWord) End();
            word.AddRange(letter[..length]);
        }

        End();
        return string.Join("\n ", words);

        void End()
        {
            if (word.Count > 0) words.Add($"=?utf-8?B?{Convert.ToBase64String([.. word])}?=");
            word.Clear();
        }
    }
}
