using System.Security.Cryptography;
using System.Text;
using System.Text.RegularExpressions;
using Fluid;
using GddWatch.Agronomy.Changes;
using GddWatch.Notices.Pictures;
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
    /// <param name="withPictures">Whether charts are drawn; where there is no font to draw them with they are left out in any case, and their words stand alone.</param>
    /// <exception cref="ArgumentException">The options are not valid; <see cref="MailHeaderOptions.Validate"/> says what is wrong.</exception>
    public MailComposer(string templatesFolder, MailHeaderOptions options, bool withPictures = true)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(templatesFolder);
        ArgumentNullException.ThrowIfNull(options);
        headers = new(options);
        HasPictures = withPictures && PictureFont.IsThere;
        FluidParser parser = TemplateRules.Parser();
        TemplateOptions rules = TemplateRules.Options();
        notices = MailTemplateSet.Read(templatesFolder, "notices", parser, rules, faults);
        words = MailTemplateSet.Read(templatesFolder, "operator", parser, rules, faults);
        bulletins = MailTemplateSet.Read(templatesFolder, "bulletin", parser, rules, faults);
        bulletins?.Try(TrialMessages.Bulletins.Select(message => MailView.Of(message, withPictures: true)), faults);
        notices?.Try(TrialMessages.Notices.Select(message => MailView.Of(message, withPictures: true)), faults);
        words?.Try(TrialMessages.Operator.Select(message => MailView.Of(message, withPictures: true)), faults);
    }

    /// <summary>What is wrong with the templates; empty where all is well. With faults, composing may throw: show them and do not start.</summary>
    public IReadOnlyList<MailTemplateFault> Faults => faults;

    /// <summary>Whether mails have charts.</summary>
    public bool HasPictures { get; }

    /// <summary>The mail for a message, with a text and an HTML alternative, and its windows as a calendar attached.</summary>
    /// <param name="message">The message; without notices it is word to the operator.</param>
    /// <param name="queuedAt">When it was queued: the mail's date, whenever it is sent.</param>
    /// <exception cref="ArgumentException">An address or the Message-ID of the message is not one.</exception>
    /// <exception cref="MailTemplateException">A template that it needs is faulty.</exception>
    public MimeMessage Compose(Message message, DateTimeOffset queuedAt)
    {
        ArgumentNullException.ThrowIfNull(message);
        bool isForOperator = message.Notices.Count == 0 && message.Bulletin is null;
        MailTemplateSet set = (message.Bulletin is not null ? bulletins : isForOperator ? words : notices) ?? throw new MailTemplateException(faults[0]);
        MailView view = MailView.Of(message, HasPictures);
        MimeMessage mail = headers.Write(message, OneLine.Of(set.Subject.Render(view)), queuedAt, isForOperator);
        var alternatives = new MultipartAlternative
        {
            Part("plain", Tidied(set.Text.Render(view))),
            Html(message, view, Tidied(set.Html.Render(view))),
        };
        alternatives.Boundary = BoundaryFor(message.MessageId);
        mail.Body = CalendarFile.For(message, queuedAt) is { } calendar
            ? new Multipart("mixed", alternatives, Attached(calendar)) { Boundary = BoundaryFor($"{message.MessageId} calendar") }
            : alternatives;
        return mail;
    }

    /// <summary>The HTML part; with its pictures beside it where there are any.</summary>
    private static MimeEntity Html(Message message, MailView view, string text)
    {
        TextPart html = Part("html", text);
        (string Id, byte[] Png)[] pictures =
        [
            .. view.Notices.Index().Where(each => each.Item.HasChart).Select(each => (NoticePictures.ContentId(each.Index), NoticePictures.Png(message.Notices[each.Index].Chart!))),
            .. view.Bulletin.Sites.Index().Where(each => each.Item.HasChart).Select(each => (BulletinPictures.ContentId(each.Index), BulletinPictures.Png(message.Bulletin!.Sites[each.Index].Chart!))),
        ];
        if (pictures.Length == 0) return html;
        var related = new MultipartRelated(html) { Boundary = BoundaryFor($"{message.MessageId} pictures") };
        foreach ((string id, byte[] png) in pictures)
        {
            related.Add(new MimePart("image", "png")
            {
                Content = new MimeContent(new MemoryStream(png)),
                ContentId = id,
                ContentDisposition = new ContentDisposition(ContentDisposition.Inline),
                ContentTransferEncoding = ContentEncoding.Base64,
            });
        }

        return related;
    }

    private static MimePart Attached(byte[] calendar)
    {
        const string name = "window.ics";
        var part = new MimePart("text", "calendar")
        {
            Content = new MimeContent(new MemoryStream(calendar)),
            ContentDisposition = new ContentDisposition(ContentDisposition.Attachment) { FileName = name },
            // Its lines and their ends are part of its form: on the way nobody touches them.
            ContentTransferEncoding = ContentEncoding.Base64,
        };
        part.ContentType.Parameters.Add("charset", "utf-8");
        part.ContentType.Parameters.Add("method", "PUBLISH");
        part.ContentType.Name = name;
        return part;
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
