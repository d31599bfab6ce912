using GddWatch.Agronomy.Windows;

namespace GddWatch.Agronomy.Changes;

/// <summary>What a mail that has not reached its reader says of one window.</summary>
/// <param name="MessageId">The mail.</param>
/// <param name="Address">Its addressee.</param>
/// <param name="Day">The day whose judging made it.</param>
/// <param name="Facts">What it tells of the window; at least one.</param>
public sealed record HeldUpNotice(string MessageId, string Address, DateOnly Day, IReadOnlyList<ToldFact> Facts)
{
    /// <summary>The site's id.</summary>
    public string Site => Facts[0].Key.Site;

    /// <summary>The treatment's id.</summary>
    public string Treatment => Facts[0].Key.Treatment;

    /// <summary>The year in which the season begins.</summary>
    public int Season => Facts[0].Key.Season;

    /// <summary>
    /// Whether what it says is no longer so. It stands as long as every day that it names is the window's day still and the window has not gone on to a state of
    /// which it says nothing. What cannot be judged, or stands on weather that has stopped coming, is no evidence against it; a window that is over and gone is.
    /// </summary>
    public bool IsOutOfDate(Standing standing)
    {
        ArgumentNullException.ThrowIfNull(standing);
        Window? window = standing.Windows.Concat(standing.Ended).FirstOrDefault(each => each.Treatment.Id == Treatment && each.Season.Year == Season);
        if (window is null) return standing.WeatherThrough is not null;
        bool isBlind = standing.WeatherThrough is not { } through || standing.Day.DayNumber - through.DayNumber > WindowJudge.StaleAfterDays;
        return window.State != WindowState.Unknown && !(isBlind && window.State != WindowState.Closed) && !Stands(window);
    }

    private bool Stands(Window window) => window.State switch
    {
        WindowState.Open => Names(NoticeKind.Opened) && DaysStand(window),
        WindowState.Closing => Names(NoticeKind.Closing) && DaysStand(window),
        WindowState.Closed => (Names(NoticeKind.Closed) || (window.FirstOpening is null && Names(NoticeKind.Opened))) && DaysStand(window),
        WindowState.Held => Facts.Any(fact => fact.Key.Kind == NoticeKind.Held && fact.Day == window.Since),
        WindowState.Waiting or WindowState.Nearing => DaysStand(window) && !Names(NoticeKind.Held),
        _ => false,
    };

    private bool Names(NoticeKind kind) => Facts.Any(fact => fact.Key.Kind == kind);

    private bool DaysStand(Window window) => Facts.All(fact => fact.Key.Kind switch
    {
        NoticeKind.Opened => fact.Day == window.FirstOpening?.Day,
        NoticeKind.Closing => fact.Day == window.PastBest?.Day,
        NoticeKind.Closed => fact.Day == window.LastClosing?.Day,
        NoticeKind.Held => false,
        _ => true,
    });
}
