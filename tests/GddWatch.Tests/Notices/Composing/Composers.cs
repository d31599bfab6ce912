using System.Text;
using GddWatch.Agronomy.Changes;
using GddWatch.Notices.Composing;
using MimeKit;

namespace GddWatch.Tests.Notices.Composing;

/// <summary>Composing as the service does it, and reading back what would be sent.</summary>
internal static class Composers
{
    public static MailHeaderOptions Headers { get; } = new() { From = "windows@example.org" };

    private static readonly Lazy<MailComposer> Committed = new(() => new(TemplatesFolder.Committed, Headers));

    public static MailComposer Make(string? folder = null) => folder is null ? Committed.Value : new(folder, Headers);

    public static byte[] BytesOf(MimeMessage mail)
    {
        FormatOptions format = FormatOptions.Default.Clone();
        format.NewLineFormat = NewLineFormat.Dos;
        using var stream = new MemoryStream();
        mail.WriteTo(format, stream);
        return stream.ToArray();
    }

    /// <summary>The mail as another program reads it from the line.</summary>
    public static MimeMessage ReadBack(Message message) => ReadBack(Make().Compose(message, SampleMessages.QueuedAt));

    public static MimeMessage ReadBack(MimeMessage mail)
    {
        using var stream = new MemoryStream(BytesOf(mail));
        return MimeMessage.Load(stream);
    }

    public static string RawOf(Message message) => Encoding.UTF8.GetString(BytesOf(Make().Compose(message, SampleMessages.QueuedAt)));
}
