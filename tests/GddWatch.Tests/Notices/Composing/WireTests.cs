using System.Text;
using System.Text.RegularExpressions;
using GddWatch.Agronomy.Changes;
using GddWatch.Notices;
using GddWatch.Notices.Channels;
using GddWatch.Tests.Loopback;
using MimeKit;
using Xunit;
using static GddWatch.Tests.Loopback.ScriptedMailServer;

namespace GddWatch.Tests.Notices.Composing;

/// <summary>What really goes over the line, byte by byte: RFC 5321 and 5322 allow 998 octets a line, RFC 2047 75 letters an encoded word (both SEEN).</summary>
public sealed partial class WireTests
{
    private static readonly string Long = string.Concat(Enumerable.Repeat("Große Wiese ", 400));
    private static readonly string Unbroken = string.Concat(Enumerable.Repeat("Überlänge", 400));
    private static readonly string UnbrokenAscii = new('x', 3000);

    public static TheoryData<string, Message> Overlong => new()
    {
        { "long", Filled(Long) },
        { "without a gap", Filled(Unbroken) },
        { "without a gap, ASCII", Filled(UnbrokenAscii) },
        { "as usual", SampleMessages.Together },
        { "as usual, not ASCII", Filled("Rasenflächen im Süden, Große Wiese: Überdüngung") },
        { "to the operator", SampleMessages.ForOperator with { Region = Unbroken, Remark = UnbrokenAscii, OperatorWords = [Long, Unbroken, UnbrokenAscii] } },
    };

    [Theory]
    [MemberData(nameof(Overlong), DisableDiscoveryEnumeration = true)]
    public async Task Every_line_is_plain_ASCII_and_no_longer_than_a_line_of_mail_may_be(string _, Message message)
    {
        await using var server = new ScriptedMailServer(UpTo(("MAIL FROM", "250 ok"), ("RCPT TO", "250 ok"), ("DATA", "354 go on"), (WholeMail, "250 ok")));
        await using var channel = new SmtpChannel(new SmtpOptions { Host = "127.0.0.1", Port = server.Port, Security = SmtpSecurity.None, From = "windows@example.org" }, TimeProvider.System);

        MimeMessage mail = Composers.Make().Compose(message, SampleMessages.QueuedAt);
        Assert.IsType<DeliveryOutcome.Accepted>(await channel.DeliverAsync(mail, TestContext.Current.CancellationToken));

        Assert.All(server.Heard, line => Assert.True(Encoding.UTF8.GetByteCount(line) <= 998 && Ascii.IsValid(line), line));
        // What was taken apart comes together again.
        MimeMessage read = Composers.ReadBack(mail);
        Assert.Equal(mail.Subject, read.Subject);
        Assert.Equal(mail.To.Mailboxes.Single().Name, read.To.Mailboxes.Single().Name);
        Assert.Equal(mail.TextBody, read.TextBody);
    }

    [Theory]
    [InlineData("Rasenflächen im Süden, Große Wiese: Überdüngung")]
    [InlineData("Ääääääääääääääääääääääääääääääääääääääää Öööööööööööööööööööööööööööö")]
    [InlineData("北の芝生と南の芝生を見る人たちのための知らせを書く係の長い名前")]
    [InlineData("Green 🌱🌱🌱🌱🌱🌱🌱🌱🌱🌱🌱🌱🌱🌱🌱🌱🌱🌱🌱🌱🌱 lawn")]
    [InlineData("Αθήνα: γρασίδι στον νότο και στον βορρά, κάθε εβδομάδα")]
    [InlineData("=?utf-8?B?ww==?= ü")]
    public void An_encoded_word_of_a_header_has_75_letters_at_most(string text)
    {
        string raw = Composers.RawOf(Filled(text));
        string head = raw[..raw.IndexOf("\r\n\r\n", StringComparison.Ordinal)];
        foreach (string header in (string[])["From", "To", "Subject"])
        {
            Match lines = Regex.Match(head, $@"^{header}:[^\r\n]*(\r\n[ \t][^\r\n]*)*", RegexOptions.Multiline | RegexOptions.CultureInvariant, TimeSpan.FromSeconds(1));
            MatchCollection words = EncodedWord().Matches(lines.Value);
            Assert.True(words.Count > 0, head);
            Assert.All(words, word => Assert.True(word.Length <= 75, $"{header}: {word.Value}"));
        }

        MimeMessage read = MimeMessage.Load(new MemoryStream(Encoding.UTF8.GetBytes(raw)), TestContext.Current.CancellationToken);
        Assert.Equal(text, read.To.Mailboxes.Single().Name);
        Assert.Equal(text, read.From.Mailboxes.Single().Name);
        Assert.Contains(text, read.Subject, StringComparison.Ordinal);
    }

    private static Message Filled(string text) => SampleMessages.One with
    {
        Region = text,
        Remark = text,
        AddresseeName = text,
        Notices = [SampleMessages.PreEmergent with { SiteName = text, TreatmentName = text, Headline = text, Reason = text, Do = [text], Figures = [new Figure(text, text, text)] }],
    };

    [GeneratedRegex(@"=\?[^?]+\?[BbQq]\?[^?]*\?=", RegexOptions.None, 1000)]
    private static partial Regex EncodedWord();
}
