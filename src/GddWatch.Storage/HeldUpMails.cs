using GddWatch.Agronomy.Changes;

namespace GddWatch.Storage;

/// <summary>What has not reached its readers and is in nobody's hand.</summary>
/// <param name="Notices">What the mails with notices say, a window of a mail each, those queued first before others.</param>
/// <param name="Bulletins">The bulletins among the others.</param>
/// <param name="ToRenew">The Message-IDs of those that were refused by an address that is to be tried again.</param>
public sealed record HeldUpMails(IReadOnlyList<HeldUpNotice> Notices, IReadOnlyList<Message> Bulletins, IReadOnlySet<string> ToRenew);
