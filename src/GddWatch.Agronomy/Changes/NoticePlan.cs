using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Windows;

namespace GddWatch.Agronomy.Changes;

/// <summary>
/// Who is to be told what, from where the windows stand and what was told before. It looks at the present state alone, so that after days of downtime,
/// or for a new site or recipient, the present is told once and the past is not.
/// </summary>
public static class NoticePlan
{
    /// <summary>How long after it a close is still told [days]; later it is no news, only an old fact.</summary>
    private const int LateCloseDays = 14;

    /// <summary>The notices due, each with the people to whom it goes.</summary>
    /// <param name="standing">Where the site's windows stand.</param>
    /// <param name="metrics">The site's weather as of the same day, for what to expect.</param>
    /// <param name="region">The people, and the units they read.</param>
    /// <param name="dayTold">The day on which a person was told of a change; null where they were not.</param>
    public static IReadOnlyList<PlannedNotice> For(
        Standing standing, SiteMetrics metrics, Region region, Func<NoticeKey, string, DateOnly?> dayTold)
    {
        var planned = new List<PlannedNotice>();
        bool isStale = standing.WeatherThrough is not { } through || standing.Day.DayNumber - through.DayNumber > WindowJudge.StaleAfterDays;
        foreach (Window window in standing.Ended.Concat(standing.Windows))
        {
            if (!window.Treatment.IsToldAt(window.Site)) continue;
            // Nothing opens, or goes past its best, on weather that has stopped coming; and of what is over only the close is still worth telling.
            if (window.State != WindowState.Closed && (isStale || standing.Ended.Contains(window))) continue;
            foreach (IGrouping<NoticeKind, Recipient> group in region.Recipients
                .Select(recipient => (Recipient: recipient, Kind: Due(window, recipient, standing.Day, dayTold)))
                .Where(due => due.Kind is not null)
                .GroupBy(due => due.Kind!.Value, due => due.Recipient))
            {
                planned.Add(new PlannedNotice(NoticeWriter.Write(window, group.Key, standing, metrics, region.Units), [.. group]));
            }
        }

        return planned;
    }

    private static NoticeKind? Due(Window window, Recipient recipient, DateOnly day, Func<NoticeKey, string, DateOnly?> dayTold)
    {
        DateOnly? opened = Told(NoticeKind.Opened);
        DateOnly? closing = Told(NoticeKind.Closing);
        NoticeKind? due = window.State switch
        {
            WindowState.Open when opened is null && closing is null => NoticeKind.Opened,
            WindowState.Closing when opened is null && closing is null => Wants(NoticeKind.Opened) ? NoticeKind.Opened : NoticeKind.Closing,
            WindowState.Closing when closing is null => NoticeKind.Closing,
            WindowState.Closed when Told(NoticeKind.Closed) is null && IsCloseNews((opened ?? closing) is not null) => NoticeKind.Closed,
            _ => null,
        };
        return due is { } kind && Wants(kind) ? kind : null;

        // Who was told of the opening is owed its close. Who asked for closes alone hears of one that has just come; at a first start the older ones stay silent.
        bool IsCloseNews(bool wasToldOpen)
        {
            if (window.LastClosing is not { } close) return false;
            bool wantsClosesAlone = !Wants(NoticeKind.Opened) && !Wants(NoticeKind.Closing);
            int newsForDays = wasToldOpen ? LateCloseDays : wantsClosesAlone ? WindowJudge.StaleAfterDays : -1;
            return close.Day >= day.AddDays(-newsForDays);
        }

        bool Wants(NoticeKind kind) => recipient.Wants(window.Site.Id, window.Treatment.Id, kind, day);
        DateOnly? Told(NoticeKind kind) =>
            dayTold(new NoticeKey(window.Site.Id, window.Treatment.Id, window.Season.Year, kind), recipient.Address);
    }
}
