using System.Text.RegularExpressions;

namespace GddWatch.Notices.Composing;

/// <summary>Holds each number to its unit, so that a line never ends between the two.</summary>
internal static partial class Unbroken
{
    private const string NoBreakSpace = "\u00A0";

    /// <summary>The text with no-break spaces between numbers and units and after ±, and a no-break hyphen in °F-days.</summary>
    public static string Of(string text) => Gap().Replace(text, NoBreakSpace)
        .Replace("°F-days", "°F\u2011days", StringComparison.Ordinal)
        .Replace("°C-days", "°C\u2011days", StringComparison.Ordinal);

    [GeneratedRegex(
        @"(?<=\d) (?=(°[CF]|%|cm|mm|m|in|inch|inches|day|days)(?![A-Za-z]))|(?<=±) (?=\d)", RegexOptions.ExplicitCapture, matchTimeoutMilliseconds: 1000)]
    private static partial Regex Gap();
}
