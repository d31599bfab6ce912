using GddWatch.Notices;
using GddWatch.Notices.Channels;
using GddWatch.Tests.Loopback;
using Xunit;
using static GddWatch.Tests.Loopback.ScriptedMailServer;

namespace GddWatch.Tests.Notices.Channels;

/// <summary>Against a mail server that misbehaves by script.</summary>
public sealed class SmtpBrokenLineTests
{
    private static readonly TimeSpan Limit = TimeSpan.FromMinutes(1);

    private static readonly (string, string)[] Acceptance =
        [("MAIL FROM", "250 ok"), ("RCPT TO", "250 ok"), ("DATA", "354 go on"), (WholeMail, "250 2.0.0 kept as 17")];

    private readonly WatchedTime time = new();

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task The_servers_last_words_are_kept()
    {
        await using var server = new ScriptedMailServer(UpTo(Acceptance));
        await using SmtpChannel channel = Channel(server.Port);

        Assert.Equal(new DeliveryOutcome.Accepted("2.0.0 kept as 17"), await channel.DeliverAsync(Mails.Make(), Stop));
    }

    [Fact]
    public async Task A_line_lost_after_the_mail_and_before_the_answer_leaves_its_fate_unknown()
    {
        await using var server = new ScriptedMailServer(UpTo(("MAIL FROM", "250 ok"), ("RCPT TO", "250 ok"), ("DATA", "354 go on"), (WholeMail, HangUp)));
        await using SmtpChannel channel = Channel(server.Port);

        Assert.IsType<DeliveryOutcome.Unknown>(await channel.DeliverAsync(Mails.Make(), Stop));
    }

    [Fact]
    public async Task A_server_silent_after_the_mail_leaves_its_fate_unknown_once_the_time_is_up()
    {
        await using var server = new ScriptedMailServer(UpTo(("MAIL FROM", "250 ok"), ("RCPT TO", "250 ok"), ("DATA", "354 go on"), (WholeMail, Silence)));
        await using SmtpChannel channel = Channel(server.Port);

        Task<DeliveryOutcome> delivery = channel.DeliverAsync(Mails.Make(), Stop);
        await server.IsSilent;
        Assert.False(delivery.IsCompleted);
        time.Advance(Limit);

        Assert.Contains("did not answer in time", Assert.IsType<DeliveryOutcome.Unknown>(await delivery).Words, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Stopping_while_the_answer_to_a_mail_is_awaited_waits_a_little_and_then_says_unknown()
    {
        await using var server = new ScriptedMailServer(UpTo(("MAIL FROM", "250 ok"), ("RCPT TO", "250 ok"), ("DATA", "354 go on"), (WholeMail, Silence)));
        await using SmtpChannel channel = Channel(server.Port);
        using var stopping = new CancellationTokenSource();

        Task<DeliveryOutcome> delivery = channel.DeliverAsync(Mails.Make(), stopping.Token);
        await server.IsSilent;
        await stopping.CancelAsync();
        Assert.False(delivery.IsCompleted);
        time.Advance(TimeSpan.FromSeconds(5));

        Assert.IsType<DeliveryOutcome.Unknown>(await delivery);
    }

    [Fact]
    public async Task Stopping_before_the_mail_goes_over_throws_and_nothing_was_sent()
    {
        await using var server = new ScriptedMailServer(UpTo(("MAIL FROM", Silence)));
        await using SmtpChannel channel = Channel(server.Port);
        using var stopping = new CancellationTokenSource();

        Task<DeliveryOutcome> delivery = channel.DeliverAsync(Mails.Make(), stopping.Token);
        await server.IsSilent;
        await stopping.CancelAsync();

        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => delivery);
        Assert.DoesNotContain(server.Heard, line => line.StartsWith("DATA", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("MAIL FROM")]
    [InlineData("RCPT TO")]
    [InlineData("DATA")]
    public async Task A_line_lost_before_the_mail_went_over_is_for_now(string hangsUpAt)
    {
        (string Awaited, string Answer)[] script = [.. Acceptance.TakeWhile(step => step.Item1 != hangsUpAt), (hangsUpAt, HangUp)];
        await using var server = new ScriptedMailServer(UpTo(script));
        await using SmtpChannel channel = Channel(server.Port);

        Assert.IsType<DeliveryOutcome.RefusedForNow>(await channel.DeliverAsync(Mails.Make(), Stop));
    }

    [Fact]
    public async Task A_line_that_the_server_closed_while_idle_is_made_again_for_the_next_mail()
    {
        await using var server = new ScriptedMailServer(UpTo([.. Acceptance, ("MAIL FROM", HangUp)]), UpTo(Acceptance));
        await using SmtpChannel channel = Channel(server.Port);

        Assert.IsType<DeliveryOutcome.Accepted>(await channel.DeliverAsync(Mails.Make(), Stop));
        Assert.IsType<DeliveryOutcome.Accepted>(await channel.DeliverAsync(Mails.Make("two@example.org"), Stop));
        Assert.Equal(2, server.Heard.Count(line => line.StartsWith("EHLO", StringComparison.Ordinal)));
    }

    [Fact]
    public async Task An_unknown_fate_is_not_tried_again_by_itself()
    {
        await using var server = new ScriptedMailServer(
            UpTo([.. Acceptance, ("MAIL FROM", "250 ok"), ("RCPT TO", "250 ok"), ("DATA", "354 go on"), (WholeMail, HangUp)]), UpTo(Acceptance));
        await using SmtpChannel channel = Channel(server.Port);
        await channel.DeliverAsync(Mails.Make(), Stop);

        Assert.IsType<DeliveryOutcome.Unknown>(await channel.DeliverAsync(Mails.Make("two@example.org"), Stop));
        Assert.Equal(1, server.Heard.Count(line => line.StartsWith("EHLO", StringComparison.Ordinal)));
    }

    [Theory]
    [InlineData("450 4.2.1 mailbox busy", false)]
    [InlineData("452 4.2.2 mailbox full", false)]
    [InlineData("550 5.1.1 no such user", true)]
    [InlineData("553 5.1.3 bad address", true)]
    [InlineData("530 5.7.0 log in first", false)]
    public async Task What_the_server_says_of_an_addressee_decides(string answer, bool isForGood)
    {
        await using var server = new ScriptedMailServer(UpTo(("MAIL FROM", "250 ok"), ("RCPT TO", answer), ("RSET", "250 ok")));
        await using SmtpChannel channel = Channel(server.Port);

        DeliveryOutcome outcome = await channel.DeliverAsync(Mails.Make(), Stop);

        string words = isForGood ? Assert.IsType<DeliveryOutcome.RefusedForGood>(outcome).Words : Assert.IsType<DeliveryOutcome.RefusedForNow>(outcome).Words;
        Assert.Contains(answer[4..], words, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_refused_sender_is_a_matter_of_configuration_and_loses_no_mail()
    {
        await using var server = new ScriptedMailServer(UpTo(("MAIL FROM", "550 5.7.1 not your address"), ("RSET", "250 ok")));
        await using SmtpChannel channel = Channel(server.Port);

        Assert.Contains(
            "The sender windows@example.org was refused: 550 5.7.1 not your address",
            Assert.IsType<DeliveryOutcome.RefusedForNow>(await channel.DeliverAsync(Mails.Make(), Stop)).Words,
            StringComparison.Ordinal);
    }

    [Fact]
    public async Task One_refused_addressee_does_not_cost_the_next_theirs()
    {
        await using var server = new ScriptedMailServer(UpTo([("MAIL FROM", "250 ok"), ("RCPT TO", "550 5.1.1 no such user"), ("RSET", "250 ok"), .. Acceptance]));
        await using SmtpChannel channel = Channel(server.Port);

        Assert.IsType<DeliveryOutcome.RefusedForGood>(await channel.DeliverAsync(Mails.Make("one@example.org", "gone@example.org"), Stop));
        Assert.IsType<DeliveryOutcome.Accepted>(await channel.DeliverAsync(Mails.Make("two@example.org"), Stop));
    }

    [Fact]
    public async Task Without_starttls_neither_the_login_nor_the_mail_is_sent()
    {
        await using var server = new ScriptedMailServer([Greeting, ("EHLO", "250-localhost\r\n250 AUTH PLAIN LOGIN")]);
        await using var channel = new SmtpChannel(Options(server.Port, SmtpSecurity.StartTls), time);

        var refused = Assert.IsType<DeliveryOutcome.RefusedForNow>(await channel.DeliverAsync(Mails.Make(), Stop));

        Assert.Contains("offers no STARTTLS", refused.Words, StringComparison.Ordinal);
        Assert.DoesNotContain(server.Heard, line => line.StartsWith("AUTH", StringComparison.Ordinal) || line.StartsWith("MAIL", StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_server_that_is_down_is_tried_three_times_with_pauses_and_then_told_with_what_to_check()
    {
        await using SmtpChannel channel = Channel(LoopbackMailServer.FreePort());

        Task<DeliveryOutcome> delivery = channel.DeliverAsync(Mails.Make(), Stop);
        for (int pause = 1; pause <= 2; pause++) time.Advance(await time.NextWaitShorterThanAsync(Limit, Stop));

        Assert.Contains("could not be reached", Assert.IsType<DeliveryOutcome.RefusedForNow>(await delivery).Words, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_server_that_is_busy_at_first_is_reached_after_a_pause()
    {
        await using var server = new ScriptedMailServer([("", "421 4.3.2 too busy"), ("", HangUp)], UpTo(Acceptance));
        await using SmtpChannel channel = Channel(server.Port);

        Task<DeliveryOutcome> delivery = channel.DeliverAsync(Mails.Make(), Stop);
        time.Advance(await time.NextWaitShorterThanAsync(Limit, Stop));

        Assert.IsType<DeliveryOutcome.Accepted>(await delivery);
    }

    [Fact]
    public async Task A_password_echoed_by_the_server_does_not_get_into_the_words()
    {
        await using var server = new ScriptedMailServer(
            [Greeting, ("EHLO", "250-localhost\r\n250 AUTH PLAIN"), ("AUTH", "535 5.7.8 a quiet secret is wrong")]);
        SmtpOptions options = Options(server.Port, SmtpSecurity.None);
        options.User = "windows";
        options.Password = "a quiet secret";
        await using var channel = new SmtpChannel(options, time);

        var refused = Assert.IsType<DeliveryOutcome.RefusedForNow>(await channel.DeliverAsync(Mails.Make(), Stop));

        Assert.Contains("5.7.8 … is wrong", refused.Words, StringComparison.Ordinal);
        Assert.DoesNotContain("a quiet secret", refused.ToString(), StringComparison.Ordinal);
    }

    private SmtpChannel Channel(int port) => new(Options(port, SmtpSecurity.None), time);

    private static SmtpOptions Options(int port, SmtpSecurity security) => new()
    {
        Host = "127.0.0.1",
        Port = port,
        Security = security,
        From = "windows@example.org",
        Timeout = Limit,
        User = security == SmtpSecurity.None ? "" : "windows",
        Password = security == SmtpSecurity.None ? "" : "a quiet secret",
    };
}
