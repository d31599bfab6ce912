using System.Security.Cryptography;
using System.Text;

namespace GddWatch.Notices.Channels;

/// <summary>Turns a Message-ID into the name of a file in one folder, whatever stands in it.</summary>
internal static class SafeFileName
{
    private const int LongestName = 180;

    /// <summary>
    /// The name: letters, digits and @ . _ - + = stay; every other byte of the UTF-8 text, and a dot at the start, becomes %XX, so that no path can be reached and
    /// two different texts never share a name. A very long one is cut and closed with its SHA-256.
    /// </summary>
    public static string For(string text)
    {
        var name = new StringBuilder(text.Length);
        foreach (byte each in Encoding.UTF8.GetBytes(text))
        {
            char letter = (char)each;
            bool stays = char.IsAsciiLetterOrDigit(letter) || letter is '@' or '_' or '-' or '+' or '=' || (letter == '.' && name.Length > 0);
            name.Append(stays ? letter : $"%{each:X2}");
        }
        if (name.Length <= LongestName) return name.ToString();
        string hash = Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(text)));
        return $"{name.ToString(0, LongestName - hash.Length - 1)}-{hash}";
    }
}
