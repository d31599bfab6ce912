using System.Collections.Frozen;
using System.Globalization;
using GddWatch.Agronomy.Changes;
using GddWatch.Agronomy.Windows;

namespace GddWatch.Storage;

/// <summary>How days, instants, states and kinds of notice are written in the database, and read back.</summary>
internal static class StoredText
{
    private const string DayFormat = "yyyy-MM-dd";

    // One width and always UTC, so that instants compare as text in every database.
    private const string InstantFormat = "yyyy-MM-dd'T'HH:mm:ss.fffffff'Z'";

    private static readonly FrozenDictionary<string, WindowState> States = Enum.GetValues<WindowState>().ToFrozenDictionary(WindowStates.Word);

    private static readonly FrozenDictionary<string, NoticeKind> Kinds = Enum.GetValues<NoticeKind>().ToFrozenDictionary(NoticeKinds.Word);

    public static string Of(DateOnly day) => day.ToString(DayFormat, CultureInfo.InvariantCulture);

    public static string? Of(DateOnly? day) => day is { } known ? Of(known) : null;

    public static string Of(DateTimeOffset instant) => instant.UtcDateTime.ToString(InstantFormat, CultureInfo.InvariantCulture);

    public static DateOnly Day(string text) =>
        DateOnly.TryParseExact(text, DayFormat, CultureInfo.InvariantCulture, DateTimeStyles.None, out DateOnly day)
            ? day
            : throw new FormatException($"'{text}' where a date such as 2026-04-12 belongs");

    public static DateOnly? DayOrNone(string? text) => text is null ? null : Day(text);

    public static DateTimeOffset Instant(string text) =>
        DateTimeOffset.TryParseExact(text, InstantFormat, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal, out DateTimeOffset instant)
            ? instant
            : throw new FormatException($"'{text}' where an instant such as 2026-04-12T06:00:00.0000000Z belongs");

    public static WindowState State(string word) =>
        States.TryGetValue(word, out WindowState state) ? state : throw new FormatException($"'{word}' where the state of a window belongs");

    public static NoticeKind Kind(string word) =>
        Kinds.TryGetValue(word, out NoticeKind kind) ? kind : throw new FormatException($"'{word}' where a kind of notice belongs");

    /// <summary>An address as it is compared: the same person is not new because a letter became a capital.</summary>
#pragma warning disable CA1308 // Lower case is what people expect to see in the table.
    public static string Address(string address) => address.ToLowerInvariant();
#pragma warning restore CA1308
}
