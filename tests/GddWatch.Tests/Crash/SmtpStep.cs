namespace GddWatch.Tests.Crash;

/// <summary>Where a mail is on its way, as its server sees it.</summary>
internal enum SmtpStep
{
    Connected,
    Sender,
    Recipient,
    BeforeAcceptance,
    AcceptedUnanswered,
    Answered,
}
