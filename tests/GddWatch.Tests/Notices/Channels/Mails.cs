using MimeKit;
using GddWatch.Tests.Notices.Composing;

namespace GddWatch.Tests.Notices.Channels;

/// <summary>Mails to deliver.</summary>
internal static class Mails
{
    public static MimeMessage Make(string id = "one@example.org", string address = "adviser@example.org") =>
        Composers.Make().Compose(SampleMessages.One with { MessageId = id, Address = address }, SampleMessages.QueuedAt);
}
