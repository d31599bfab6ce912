using System.Security.Cryptography;
using System.Text;
using System.Text.RegularExpressions;
using Fluid;
using GddWatch.Agronomy.Changes;
using MimeKit;

namespace GddWatch.Notices.Composing;

/// <summary>
/// Makes the mail for a message from the templates in a folder. The same message and the same day of queueing give the same bytes, whenever and however often
/// it is composed, so that a repeat is recognisably the same mail.
/// </summary>
public sealed partial class MailComposer
{
    private readonly MailHeaders headers;
    private readonly MailTemplateSet? notices;
    private readonly MailTemplateSet? words;
    private readonly MailTemplateSet? bulletins;
    private readonly List<MailTemplateFault> faults = [];

    /// <summary>Reads the templates once and tries them on invented messages. What is wrong with them stands in <see cref="Faults"/>.</summary>
    /// <param name="templatesFolder">The folder with notices.*.liquid, bulletin.*.liquid and operator.*.liquid.</param>
    /// <param name="options">What stands in the headers.</param>
    /// <exception cref="ArgumentException">The options are not valid; <see cref="MailHeaderOptions.Validate"/> says what is wrong.</exception>
    public MailComposer(string templatesFolder, MailHeaderOptions options)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(templatesFolder);
        ArgumentNullException.ThrowIfNull(options);
        headers = new(options);
        FluidParser parser = TemplateRules.Parser();
        TemplateOptions rules = TemplateRules.Options();
        notices = MailTemplateSet.Read(templatesFolder, "notices", parser, rules, faults);
        words = MailTemplateSet.Read(templatesFolder, "operator", parser, rules, faults);
        bulletins = MailTemplateSet.Read(templatesFolder, "bulletin", parser, rules, faults);
        bulletins?.Try(TrialMessages.Bulletins.Select(MailView.Of), faults);
        notices?.Try(TrialMessages.Notices.Select(MailView.Of), faults);
        words?.Try(TrialMessages.Operator.Select(MailView.Of), faults);
    }

    /// <summary>What is wrong with the templates; empty where all is well. With faults, composing may throw: show them and do not start.</summary>
    public IReadOnlyList<MailTemplateFault> Faults => faults;

    /// <summary>The mail for a message, with a text and an HTML alternative.</summary>
    /// <param name="message">The message; without notices it is word to the operator.</param>
    /// <param name="queuedAt">When it was queued: the mail's date, whenever it is sent.</param>
    /// <exception cref="ArgumentException">An address or the Message-ID of the message is not one.</exception>
    /// <exception cref="MailTemplateException">A template that it needs is faulty.</exception>
    public MimeMessage Compose(Message message, DateTimeOffset queuedAt)
    {
        ArgumentNullException.ThrowIfNull(message);
        bool isForOperator = message.Notices.Count == 0 && message.Bulletin is null;
        MailTemplateSet set = (message.Bulletin is not null ? bulletins : isForOperator ? words : notices) ?? throw new MailTemplateException(faults[0]);
        MailView view = MailView.Of(message);
        MimeMessage mail = headers.Write(message, OneLine.Of(set.Subject.Render(view)), queuedAt, isForOperator);
        mail.Body = new MultipartAlternative
        {
            Part("plain", Tidied(set.Text.Render(view))),
            Html(message, Tidied(set.Html.Render(view))),
        };
        ((Multipart)mail.Body).Boundary = BoundaryFor(message.MessageId);
        return mail;
    }

    /// <summary>The HTML part; with its pictures beside it where there are any.</summary>
    private static MimeEntity Html(Message message, string text)
    {
        TextPart html = Part("html", text);
        if (message.Bulletin?.Sites.All(site => site.Chart is null) ?? true) return html;
        var related = new MultipartRelated(html) { Boundary = BoundaryFor($"{message.MessageId} pictures") };
        foreach ((int index, BulletinSite site) in message.Bulletin.Sites.Index())
        {
            if (site.Chart is null) continue;
            related.Add(new MimePart("image", "png")
            {
                Content = new MimeContent(new MemoryStream(BulletinPictures.Png(site.Chart))),
                ContentId = BulletinPictures.ContentId(index),
                ContentDisposition = new ContentDisposition(ContentDisposition.Inline),
                ContentTransferEncoding = ContentEncoding.Base64,
            });
        }

        return related;
    }

    private static TextPart Part(string subtype, string text)
    {
        var part = new TextPart(subtype) { ContentTransferEncoding = ContentEncoding.QuotedPrintable };
        part.SetText(Encoding.UTF8, text);
        return part;
    }

    // "=_" never occurs in quoted-printable text, so the boundary cannot be met in a part.
    private static string BoundaryFor(string messageId) => $"=_{Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(messageId)))[..32]}";

    // Tags of a template leave empty lines and spaces behind.
    private static string Tidied(string text)
    {
        string lines = TrailingSpace().Replace(text.ReplaceLineEndings("\n"), "");
        return $"{SeveralEmptyLines().Replace(lines, "\n\n").Trim('\n')}\n".ReplaceLineEndings("\r\n");
    }

    [GeneratedRegex(@"[ \t]+$", RegexOptions.Multiline, matchTimeoutMilliseconds: 5000)]
    private static partial Regex TrailingSpace();

    [GeneratedRegex(@"\n{3,}", RegexOptions.None, matchTimeoutMilliseconds: 5000)]
    private static partial Regex SeveralEmptyLines();
}
