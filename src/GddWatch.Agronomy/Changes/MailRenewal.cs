using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Windows;

namespace GddWatch.Agronomy.Changes;

/// <summary>
/// What becomes of mails that have not reached their readers when a pass has judged anew. A mail of which anything is out of date is withdrawn. What it said of
/// windows that have gone on is told as it is now (<see cref="NoticePlan"/>); what still stands of it goes into a fresh mail as it was. So nobody is told late what is
/// no longer so, and nobody is left without word: each window of a withdrawn mail is told once.
/// </summary>
public sealed class MailRenewal
{
    private readonly HashSet<(string Site, string Treatment, int Season, string Address)> outOfDate;

    private MailRenewal(IReadOnlyList<HeldUpNotice> outdated, IReadOnlySet<string> withdrawn)
    {
        Outdated = outdated;
        Withdrawn = withdrawn;
        outOfDate = [.. outdated.Select(WindowAndReader)];
    }

    /// <summary>What is out of date.</summary>
    public IReadOnlyList<HeldUpNotice> Outdated { get; }

    /// <summary>The mails that are withdrawn, by their Message-IDs.</summary>
    public IReadOnlySet<string> Withdrawn { get; }

    /// <summary>Compares what waits with how the windows stand.</summary>
    /// <param name="waiting">What the waiting mails say.</param>
    /// <param name="standings">Where the windows of the sites stand that could be judged; what is said of another site stands.</param>
    /// <param name="recipients">The people who are told; a mail to anybody else is withdrawn.</param>
    /// <param name="toRenew">Mails to be withdrawn in any case, such as those refused while their reader's mailbox was not there.</param>
    public static MailRenewal Of(IReadOnlyList<HeldUpNotice> waiting, IReadOnlyList<Standing> standings, IReadOnlyList<Recipient> recipients, IReadOnlySet<string> toRenew)
    {
        ArgumentNullException.ThrowIfNull(toRenew);
        Dictionary<string, Standing> bySite = standings.ToDictionary(each => each.SiteId, StringComparer.Ordinal);
        HashSet<string> people = [.. recipients.Select(each => NoticePlan.Folded(each.Address))];
        HeldUpNotice[] outdated = [.. waiting.Where(each => bySite.TryGetValue(each.Site, out Standing? standing) && each.IsOutOfDate(standing))];
        HashSet<(string, string, int, string)> windows = [.. outdated.Select(WindowAndReader)];
        // Several mails may say something of one window: one notice takes the place of all of it.
        HashSet<string> withdrawn =
        [
            .. waiting.Where(each => windows.Contains(WindowAndReader(each)) || toRenew.Contains(each.MessageId) || !people.Contains(NoticePlan.Folded(each.Address)))
                .Select(each => each.MessageId),
        ];
        return new MailRenewal(outdated, withdrawn);
    }

    /// <summary>What still stands of the withdrawn mails, for those who still want to hear of it.</summary>
    /// <param name="mails">The withdrawn mails.</param>
    /// <param name="recipients">The people who are told.</param>
    /// <param name="day">The day of the pass.</param>
    /// <param name="told">What a person was last told of a change.</param>
    public IEnumerable<PlannedNotice> StillStanding(IEnumerable<Message> mails, IReadOnlyList<Recipient> recipients, DateOnly day, Func<NoticeKey, string, Told?> told)
    {
        ArgumentNullException.ThrowIfNull(mails);
        ArgumentNullException.ThrowIfNull(told);
        foreach (Message mail in mails)
        {
            Recipient? reader = recipients.FirstOrDefault(each => NoticePlan.Folded(each.Address) == NoticePlan.Folded(mail.Address));
            if (reader is null) continue;
            foreach (Notice notice in mail.Notices)
            {
                NoticeKey key = notice.Key;
                bool isToldAsItIsNow = outOfDate.Contains((key.Site, key.Treatment, key.Season, NoticePlan.Folded(mail.Address)));
                if (isToldAsItIsNow || !reader.HearsOf(key.Site, key.Treatment, day)) continue;
                int last = Enum.GetValues<NoticeKind>().Max(kind => told(key with { Kind = kind, Revision = 0 }, mail.Address)?.Revision ?? 0);
                yield return new PlannedNotice(notice.Again(last + 1), [reader]);
            }
        }
    }

    private static (string Site, string Treatment, int Season, string Address) WindowAndReader(HeldUpNotice notice) =>
        (notice.Site, notice.Treatment, notice.Season, NoticePlan.Folded(notice.Address));
}
