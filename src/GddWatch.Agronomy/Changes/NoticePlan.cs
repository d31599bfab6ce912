using GddWatch.Agronomy.Chances;
using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Treatments;
using GddWatch.Agronomy.Windows;

namespace GddWatch.Agronomy.Changes;

/// <summary>
/// Who is to be told what, from where the windows stand and what was told before. It looks at the present state alone, so that after days of downtime,
/// or for a new site or recipient, the present is told once and the past is not.
/// </summary>
public static class NoticePlan
{
    /// <summary>How long after it a close is still told, and an ended window still corrected [days]; later it is no news, only an old fact.</summary>
    private const int LateCloseDays = 14;

    /// <summary>The notices due, each with the people to whom it goes.</summary>
    /// <param name="standing">Where the site's windows stand.</param>
    /// <param name="metrics">The site's weather and journal as of the same day.</param>
    /// <param name="region">The people, the local rules, and the units that people read.</param>
    /// <param name="configuration">The fingerprint of the configuration that judged. What was told under another one is not corrected by the weather.</param>
    /// <param name="told">What a person was last told of a change, whatever the revision of the key; null where they were told nothing of it.</param>
    /// <param name="ahead">What the days ahead may bring; it is asked only where something is told of it.</param>
    /// <param name="heldUp">
    /// What mails that were held up on their way say of these windows and is out of date: each gives one notice of how the window stands now, in place of them.
    /// </param>
    public static IReadOnlyList<PlannedNotice> For(
        Standing standing, SiteMetrics metrics, Region region, string configuration, Func<NoticeKey, string, Told?> told, DaysAhead? ahead = null,
        IReadOnlyList<HeldUpNotice>? heldUp = null)
    {
        ILookup<(string, int, string), HeldUpNotice> outdated = (heldUp ?? []).ToLookup(each => (each.Treatment, each.Season, Folded(each.Address)));
        var planned = new List<PlannedNotice>();
        var writer = new NoticeWriter(standing, metrics, region, ahead ?? DaysAhead.Unknown);
        bool isStale = standing.WeatherThrough is not { } through || standing.Day.DayNumber - through.DayNumber > WindowJudge.StaleAfterDays;
        foreach (Window window in standing.Ended.Concat(standing.Windows))
        {
            if (!window.Treatment.IsToldAt(window.Site) || window.Treatment.BulletinOnly || window.State == WindowState.Done) continue;
            // Nothing opens, or goes past its best, on weather that has stopped coming; and of what is over only the close is still worth telling.
            bool hasEnded = standing.Ended.Contains(window);
            bool isNews = window.State == WindowState.Closed || !(isStale || (hasEnded && !JustEnded(window, standing.Day)));
            if (IsBanned(window, region, standing.Day) || IsSettledAgainst(window, standing)) continue;
            foreach (IGrouping<DueNotice, Recipient> group in region.Recipients
                .Select(recipient => (Recipient: recipient, Due: NoticeFor(recipient)))
                .Where(each => each.Due is not null)
                .GroupBy(each => each.Due!, each => each.Recipient))
            {
                planned.Add(new PlannedNotice(writer.Write(window, group.Key), [.. group]));
            }

            DueNotice? NoticeFor(Recipient recipient)
            {
                var due = new Due(
                    window, hasEnded ? DaysAhead.Unknown : ahead ?? DaysAhead.Unknown, recipient, standing.Day, hasEnded, configuration, told);
                HeldUpNotice[] instead = [.. outdated[(window.Treatment.Id, window.Season.Year, Folded(recipient.Address))]];
                return (instead.Length > 0 ? due.InsteadOf(instead.Max(each => each.Day)) : null) ?? (isNews ? due.Notice() : null);
            }
        }

        return planned;
    }

    /// <summary>An address as it is compared: capitals make no difference.</summary>
    internal static string Folded(string address) => address.ToUpperInvariant();

    /// <summary>Whether a local rule bans this kind of work at the site on a day.</summary>
    public static bool IsBanned(Window window, Region region, DateOnly day) =>
        region.RulesAbout(window.Site, window.Treatment.Work).Any(rule => rule.Bans(day));

    /// <summary>Whether the site prefers a rival of this treatment, whose season has begun and whose window has not passed.</summary>
    public static bool IsSettledAgainst(Window window, Standing standing) =>
        !window.Site.Prefers.Contains(window.Treatment.Id) && PreferredRival(window, standing) is not null;

    /// <summary>The rival that the site prefers, where one is open or still to come this season.</summary>
    public static Window? PreferredRival(Window window, Standing standing) => window.Site.Prefers.Count == 0
        ? null
        : window.Treatment.Excludes
            .Where(exclusion => window.Site.Prefers.Contains(exclusion.Treatment))
            .Select(exclusion => standing.Windows.FirstOrDefault(other => other.Treatment.Id == exclusion.Treatment))
            .FirstOrDefault(rival => rival is { State: WindowState.Waiting or WindowState.Nearing or WindowState.Open or WindowState.Closing }
                && rival.Season.Span.Contains(standing.Day) && rival.Treatment.IsToldAt(rival.Site));

    private static bool JustEnded(Window window, DateOnly day) => window.Season.Span.Last >= day.AddDays(-LateCloseDays);

    /// <summary>What is due to one person about one window.</summary>
    private sealed class Due(Window window, DaysAhead ahead, Recipient recipient, DateOnly day, bool hasEnded, string configuration, Func<NoticeKey, string, Told?> told)
    {
        public DueNotice? Notice() => Correction() ?? Held() ?? Change() ?? HeadsUp();

        /// <summary>
        /// How the window stands now, in place of a mail that was held up and is out of date: told of whichever kind it is, since this person was to hear of the
        /// window and may have heard nothing. Null where nothing can be said.
        /// </summary>
        public DueNotice? InsteadOf(DateOnly heldUp)
        {
            if (!recipient.HearsOf(window.Site.Id, window.Treatment.Id, day)) return null;
            Told[] all = [.. Enum.GetValues<NoticeKind>().Select(LastTold).OfType<Told>()];
            int revision = all.Length == 0 ? 0 : all.Max(each => each.Revision) + 1;
            NoticeKind? kind = window.State switch
            {
                WindowState.Open => NoticeKind.Opened,
                WindowState.Closing => Wants(NoticeKind.Closing) && !Wants(NoticeKind.Opened) ? NoticeKind.Closing : NoticeKind.Opened,
                WindowState.Closed when window.LastClosing is not null => NoticeKind.Closed,
                WindowState.Held => NoticeKind.Held,
                _ => null,
            };
            if (kind is { } known) return new DueNotice(known, revision, null, heldUp);
            if (window.State is not (WindowState.Waiting or WindowState.Nearing or WindowState.Closed)) return null;
            var said = new Said(heldUp, Day(LastTold(NoticeKind.Opened)), Day(LastTold(NoticeKind.Closing)), Day(LastTold(NoticeKind.Closed)));
            return said.Differs(window) ? new DueNotice(NoticeKind.Corrected, revision, said, heldUp) : null;
        }

        /// <summary>Something told turned out otherwise by the weather.</summary>
        private DueNotice? Correction()
        {
            if (!Wants(NoticeKind.Corrected) || window.State is WindowState.Unknown or WindowState.Held) return null;
            if (window.State == WindowState.Closed && window.Transitions[^1].Day < day.AddDays(-LateCloseDays)) return null;
            Told?[] all = [ToldNow(NoticeKind.Opened), ToldNow(NoticeKind.Closing), ToldNow(NoticeKind.Closed)];
            Told[] known = [.. all.OfType<Told>()];
            if (known.Length == 0 || known.Any(each => each.Configuration != configuration)) return null;
            var said = new Said(known.Max(each => each.Day), Day(all[0]), Day(all[1]), Day(all[2]));
            return said.Differs(window) ? new DueNotice(NoticeKind.Corrected, known.Max(each => each.Revision) + 1, said) : null;
        }

        /// <summary>A window that stands open by the weather is held by something recorded.</summary>
        private DueNotice? Held()
        {
            if (window.State != WindowState.Held || !Wants(NoticeKind.Held)) return null;
            if (window.Course[^1].State is not (WindowState.Open or WindowState.Closing)) return null;
            Told? before = LastTold(NoticeKind.Held);
            return before?.Fact == window.Since ? null : new DueNotice(NoticeKind.Held, before is null ? 0 : before.Revision + 1, null);
        }

        private DueNotice? Change()
        {
            Told? opened = ToldChange(NoticeKind.Opened);
            Told? closing = ToldChange(NoticeKind.Closing);
            if (window.IsOpen && !hasEnded && opened is not null && IsOpenAgain(opened) && Wants(NoticeKind.Opened))
            {
                return new DueNotice(NoticeKind.Opened, Math.Max(opened.Revision, closing?.Revision ?? 0) + 1, null);
            }

            NoticeKind? due = window.State switch
            {
                WindowState.Open or WindowState.Closing when hasEnded => null,
                WindowState.Open when opened is null && closing?.Fact is null => NoticeKind.Opened,
                WindowState.Closing when opened is null && closing is null => Wants(NoticeKind.Opened) ? NoticeKind.Opened : NoticeKind.Closing,
                WindowState.Closing when closing is null => NoticeKind.Closing,
                WindowState.Closed when ToldChange(NoticeKind.Closed) is null && IsCloseNews((opened ?? closing)?.Fact is not null) => NoticeKind.Closed,
                _ => null,
            };
            return due is { } kind && Wants(kind) ? new DueNotice(kind, RevisionNow(), null) : null;
        }

        /// <summary>It is likely to open soon, and that was not told yet, or the day of an even chance has moved since.</summary>
        private DueNotice? HeadsUp()
        {
            if (window.State is not (WindowState.Waiting or WindowState.Nearing) || !Wants(NoticeKind.HeadsUp)) return null;
            if (ahead.Of(window) is not { } chances || !Nearing.IsNearing(chances)) return null;
            Told? before = ToldNow(NoticeKind.HeadsUp);
            if (before is null) return new DueNotice(NoticeKind.HeadsUp, LastTold(NoticeKind.HeadsUp) is { } older ? older.Revision + 1 : 0, null);
            return before.Fact is { } said && Math.Abs(said.DayNumber - chances.Median!.Value.DayNumber) >= window.Treatment.HeadsUp.AgainWhenMovedDays
                ? new DueNotice(NoticeKind.HeadsUp, before.Revision + 1, null) { Moved = before }
                : null;
        }

        /// <summary>It was done, or told to be held, after its opening was told, and stands open again.</summary>
        private bool IsOpenAgain(Told opened)
        {
            Transition? done = window.Transitions.LastOrDefault(transition => transition.State == WindowState.Done);
            return done?.Day > opened.Day || LastTold(NoticeKind.Held)?.Day >= opened.Day;
        }

        // Who was told of the opening is owed its close. Who asked for closes alone hears of one that has just come; at a first start the older ones stay silent.
        private bool IsCloseNews(bool wasToldOpen)
        {
            if (window.LastClosing is not { } close) return false;
            bool wantsClosesAlone = !Wants(NoticeKind.Opened) && !Wants(NoticeKind.Closing);
            int newsForDays = wasToldOpen ? LateCloseDays : wantsClosesAlone ? WindowJudge.StaleAfterDays : -1;
            return close.Day >= day.AddDays(-newsForDays);
        }

        private static SaidDay? Day(Told? each) => each is null ? null : new SaidDay(each.Fact);

        private bool Wants(NoticeKind kind) => recipient.Wants(window.Site.Id, window.Treatment.Id, kind, day);

        /// <summary>What was told since the window began anew: what was told before is neither repeated nor corrected.</summary>
        private Told? ToldNow(NoticeKind kind) => LastTold(kind) is { } last && !(last.Day < window.BegunAnew) ? last : null;

        /// <summary>
        /// The same of changes that came. Who hears of no corrections, and was told in place of a mail that was held up that a change had not come, is told of it once it comes.
        /// </summary>
        private Told? ToldChange(NoticeKind kind) => ToldNow(kind) is { } last && (last.Fact is not null || Wants(NoticeKind.Corrected)) ? last : null;

        /// <summary>The revision of what is told first since the window began anew, past all that was told before.</summary>
        private int RevisionNow()
        {
            Told[] all = [.. new[] { LastTold(NoticeKind.Opened), LastTold(NoticeKind.Closing), LastTold(NoticeKind.Closed) }.OfType<Told>()];
            Told[] before = [.. all.Where(each => each.Day < window.BegunAnew)];
            if (before.Length == 0) return !Wants(NoticeKind.Corrected) && all.Any(each => each.Fact is null) ? all.Max(each => each.Revision) + 1 : 0;
            return before.Length == all.Length ? before.Max(each => each.Revision) + 1 : all.Max(each => each.Revision);
        }

        private Told? LastTold(NoticeKind kind) => told(new NoticeKey(window.Site.Id, window.Treatment.Id, window.Season.Year, kind), recipient.Address);
    }
}
