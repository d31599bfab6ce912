using GddWatch.Agronomy.Changes;
using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Windows;
using GddWatch.Storage;

namespace GddWatch.Watching;

/// <summary>The mails that a pass finds waiting, and the addresses that it finds refusing.</summary>
internal sealed class HeldUpMail(HeldUpMails mails, IReadOnlyList<RefusingAddress> refusing, Region region)
{
    private readonly ILookup<string, HeldUpNotice> bySite = mails.Notices.ToLookup(each => each.Site, StringComparer.Ordinal);

    /// <summary>The people who are told in this pass: all but those whose address is paused.</summary>
    public IReadOnlyList<Recipient> Recipients { get; } = [.. region.Recipients.Where(recipient => !refusing.Any(each => each.IsPaused && each.Is(recipient.Address)))];

    /// <summary>The addresses whose refusals are forgotten after this pass: they are told again, or nobody is told there any more.</summary>
    public IReadOnlyList<string> Forgiven { get; } =
    [
        .. refusing.Where(each => each.ResumedAt is not null || !(region.Recipients.Any(recipient => each.Is(recipient.Address)) || each.Is(region.OperatorAddress)))
            .Select(each => each.Address),
    ];

    public static async Task<HeldUpMail> LoadAsync(Database database, Region region, DateTimeOffset at, CancellationToken stop) =>
        new(await new Outbox(database).LoadHeldUpAsync(at, stop), await new RefusingAddresses(database).LoadAsync(stop), region);

    /// <summary>What they say of a site's windows and is out of date.</summary>
    public IReadOnlyList<HeldUpNotice> OutOfDate(Standing standing) => [.. bySite[standing.SiteId].Where(each => each.IsOutOfDate(standing))];

    /// <summary>What becomes of those with notices.</summary>
    public MailRenewal Renew(IReadOnlyList<Standing> standings) => MailRenewal.Of(mails.Notices, standings, Recipients, mails.ToRenew);

    /// <summary>All that are withdrawn: of the bulletins those that a new one follows, and those to people who are not told any more.</summary>
    public IReadOnlyCollection<string> Withdrawn(MailRenewal renewal, IReadOnlyList<QueuedMessage> newBulletins)
    {
        IEnumerable<Message> bulletins = mails.Bulletins.Where(old =>
            newBulletins.Any(each => IsSame(each.Message.Address, old.Address) && each.Message.MessageId != old.MessageId) || !Recipients.Any(recipient => IsSame(recipient.Address, old.Address)));
        return [.. renewal.Withdrawn.Union(bulletins.Select(each => each.MessageId)).Union(mails.ToRenew)];
    }

    private static bool IsSame(string one, string other) => string.Equals(one, other, StringComparison.OrdinalIgnoreCase);
}
