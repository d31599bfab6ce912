using GddWatch.Agronomy.Windows;

namespace GddWatch.Agronomy.Changes;

/// <summary>A notice that is due to a person: its kind, and for a correction what that person was told before.</summary>
/// <param name="Kind">The kind.</param>
/// <param name="Revision">The revision that its key carries.</param>
/// <param name="Said">What was told before; null for what is told first.</param>
/// <param name="HeldUp">The day of the mail in whose place it is told, since that one was held up and is out of date; null where there is none.</param>
internal sealed record DueNotice(NoticeKind Kind, int Revision, Said? Said, DateOnly? HeldUp = null)
{
    /// <summary>What was told beforehand the last time, where the day of an even chance has moved since; null where it is told for the first time.</summary>
    public Told? Moved { get; init; }

    /// <summary>Its key.</summary>
    public NoticeKey KeyOf(Window window, NoticeKind kind) => new(window.Site.Id, window.Treatment.Id, window.Season.Year, kind, Revision);
}
