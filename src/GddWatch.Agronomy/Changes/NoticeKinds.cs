namespace GddWatch.Agronomy.Changes;

/// <summary>The words that configuration, output and mails use for the kinds of notice.</summary>
public static class NoticeKinds
{
    /// <summary>The word for a kind.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The kind has no word.</exception>
    public static string Word(NoticeKind kind) => kind switch
    {
        NoticeKind.HeadsUp => "heads-up",
        NoticeKind.Opened => "opened",
        NoticeKind.Closing => "closing",
        NoticeKind.Closed => "closed",
        NoticeKind.Held => "held",
        NoticeKind.Corrected => "corrected",
        NoticeKind.Bulletin => "bulletin",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "This kind of notice has no word."),
    };
}
