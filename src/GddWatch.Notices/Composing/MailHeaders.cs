using System.Text;
using GddWatch.Agronomy.Changes;
using MimeKit;
using MimeKit.Utils;

namespace GddWatch.Notices.Composing;

/// <summary>The headers of a mail.</summary>
internal sealed class MailHeaders
{
    /// <summary>A label of a domain has 63 letters at most (RFC 1035).</summary>
    private const int LongestLabel = 63;

    private readonly MailHeaderOptions options;
    private readonly MailboxAddress from;

    public MailHeaders(MailHeaderOptions options)
    {
        IReadOnlyList<string> wrong = options.Validate();
        if (wrong.Count > 0) throw new ArgumentException(string.Join(" ", wrong), nameof(options));
        this.options = options;
        from = MailboxAddress.Parse(options.From);
    }

    /// <summary>A mail without a body.</summary>
    public MimeMessage Write(Message message, string subject, DateTimeOffset queuedAt, bool isForOperator)
    {
        string region = OneLine.Of(message.Region);
        var mail = new MimeMessage();
        mail.Headers.Replace(AddressOf(HeaderId.From, Mailbox(options.FromName.Length > 0 ? options.FromName : region, from.Address, "The address that mails come from")));
        mail.Headers.Replace(AddressOf(HeaderId.To, Mailbox(message.AddresseeName, message.Address, "The addressee")));
        mail.ReplyTo.Add(Mailbox("", message.OperatorAddress, "The operator's address"));
        mail.Headers.Replace(SubjectOf(subject));
        mail.Date = queuedAt;
        mail.MessageId = MessageIdOf(message);
        // RFC 3834: automatic answers (out of office) are not to be sent to it.
        mail.Headers.Add("Auto-Submitted", "auto-generated");
        mail.Headers.Add(HeaderId.ListId, $"<{ListIdFor(region)}>");
        // The operator cannot be unsubscribed from the service's own troubles.
        if (!isForOperator) mail.Headers.Add(HeaderId.ListUnsubscribe, $"<{StopRequest.Link(message.OperatorAddress, message.Region)}>");
        return mail;
    }

    private static Header SubjectOf(string subject) => Ascii.IsValid(subject) ? new Header(HeaderId.Subject, subject) : Raw(HeaderId.Subject, EncodedWords.Of(subject));

    private static Header AddressOf(HeaderId id, MailboxAddress mailbox) => string.IsNullOrEmpty(mailbox.Name) || Ascii.IsValid(mailbox.Name)
        ? new Header(id, mailbox.ToString(encode: true))
        : Raw(id, $"{EncodedWords.Of(mailbox.Name)}\n <{MailboxAddress.EncodeAddrspec(mailbox.Address)}>");

    private static Header Raw(HeaderId id, string folded)
    {
        var header = new Header(id, "");
        header.SetRawValue(Encoding.UTF8.GetBytes($" {folded}\n"));
        return header;
    }

    private static MailboxAddress Mailbox(string name, string address, string role)
    {
        if (!OneAddress.TryRead(address, out MailboxAddress? parsed))
        {
            throw new ArgumentException($"{role} must be one mail address such as \"adviser@example.org\"; found \"{OneLine.Of(address)}\".", nameof(address));
        }
        return new(Encoding.UTF8, OneLine.Of(name), parsed.Address);
    }

    private static string MessageIdOf(Message message)
    {
        string bare = message.MessageId.StartsWith('<') && message.MessageId.EndsWith('>') ? message.MessageId[1..^1] : message.MessageId;
        string? read = bare.Any(each => char.IsControl(each) || char.IsWhiteSpace(each)) ? null : MimeUtils.EnumerateReferences($"<{bare}>").FirstOrDefault();
        return read == bare && bare.Contains('@', StringComparison.Ordinal)
            ? bare
            : throw new ArgumentException($"The Message-ID must have the form left@right; found \"{OneLine.Of(message.MessageId)}\".", nameof(message));
    }

    private string ListIdFor(string region)
    {
        if (options.ListId.Length > 0) return options.ListId;
        var label = new StringBuilder();
        foreach (char each in region.ToLowerInvariant())
        {
            if (char.IsAsciiLetterOrDigit(each))
            {
                label.Append(each);
            }
            else if (label.Length > 0 && label[^1] != '-')
            {
                label.Append('-');
            }
        }
        string slug = label.ToString(0, Math.Min(label.Length, LongestLabel)).Trim('-');
        return $"{(slug.Length > 0 ? slug : "windows")}.{from.Domain}";
    }
}
