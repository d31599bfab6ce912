using GddWatch.Agronomy.Places;
using GddWatch.Notices;
using GddWatch.Notices.Channels;
using GddWatch.Storage;
using GddWatch.Tests.Storage;
using GddWatch.Watching;
using MimeKit;
using Xunit;

namespace GddWatch.Tests.Watching;

/// <summary>Giving up, pausing an address, quiet hours, and claims that outlast their worker's patience.</summary>
public sealed class DeliveryRulesTests
{
    private const string Adviser = "adviser@example.org";

    private static readonly DeliveryOutcome Busy = new DeliveryOutcome.RefusedForNow("451 busy");
    private static readonly DeliveryOutcome Gone = new DeliveryOutcome.RefusedForGood("550 no such user");
    private static readonly DeliveryOutcome Taken = new DeliveryOutcome.Accepted("250 ok");

    [Fact]
    public async Task Three_different_mails_refused_in_a_row_pause_an_address_and_nothing_more_is_tried_there()
    {
        await using Queue queue = await Queue.WithMailsToAsync(Adviser, Adviser, Adviser, "Adviser@example.org", Adviser, "partner@example.org");
        var channel = new Told(to => to == "partner@example.org" ? Taken : Gone);

        DeliveryReport report = await queue.DeliverAsync(channel);

        Assert.Equal([Queue.Id(1), Queue.Id(2), Queue.Id(3), Queue.Id(6)], channel.Tried);
        Assert.Equal(4, report.Losses.Count);
        Assert.Contains("adviser@example.org refused 3 mails for good, one after the other, and is paused", report.Losses[^1], StringComparison.Ordinal);
        RefusingAddress paused = Assert.Single(await queue.RefusingAsync());
        Assert.True(paused.IsPaused);
        Assert.Equal((3, "550 no such user"), (paused.Refusals, paused.LastWords));
        IReadOnlyDictionary<string, UndeliveredMessage> kept = await queue.UndeliveredAsync();
        Assert.Equal(5, kept.Count);
        Assert.StartsWith("Not sent, since the address is paused: 550", kept[Queue.Id(5)].LastWords, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_mail_that_was_taken_forgives_those_refused_before()
    {
        await using Queue queue = await Queue.WithMailsToAsync(Adviser, Adviser, Adviser, Adviser, Adviser);
        int count = 0;

        await queue.DeliverAsync(new Told(_ => ++count == 3 ? Taken : Gone));

        Assert.False(Assert.Single(await queue.RefusingAsync()).IsPaused);
        Assert.Equal(5, count);
    }

    [Fact]
    public async Task The_operator_is_never_paused()
    {
        await using Queue queue = await Queue.WithMailsToAsync([.. Enumerable.Repeat("operator@example.org", 5)]);
        var channel = new Told(_ => Gone);

        await queue.DeliverAsync(channel);

        Assert.Equal(5, channel.Tried.Count);
        Assert.False(Assert.Single(await queue.RefusingAsync()).IsPaused);
    }

    [Fact]
    public async Task The_pauses_grow_until_the_mail_is_given_up_after_three_days_and_the_address_is_not_blamed()
    {
        await using Queue queue = await Queue.WithMailsToAsync(Adviser);
        // It had been waiting for its first attempt for a week: only trying counts.
        queue.Time.Advance(TimeSpan.FromDays(7));
        DateTimeOffset first = queue.Time.GetUtcNow();
        var attempts = new List<DateTimeOffset>();
        for (int i = 0; i < 100 && (await queue.UndeliveredAsync())[Queue.Id(1)].NextAttempt is { } next; i++)
        {
            if (next > queue.Time.GetUtcNow()) queue.Time.SetUtcNow(next);
            await queue.DeliverAsync(new Told(_ =>
            {
                attempts.Add(queue.Time.GetUtcNow());
                return Busy;
            }));
        }

        UndeliveredMessage kept = (await queue.UndeliveredAsync())[Queue.Id(1)];
        Assert.Equal(("refused-for-good", attempts.Count), (kept.LastOutcome, kept.Attempts));
        Assert.StartsWith("Given up after 3 days of trying: 451 busy", kept.LastWords, StringComparison.Ordinal);
        TimeSpan[] pauses = [.. attempts.Zip(attempts.Skip(1), (one, next) => next - one)];
        Assert.All(pauses.Zip(pauses.Skip(1)), pair => Assert.True(pair.Second > pair.First - TimeSpan.FromMinutes(1), $"{pair.First} then {pair.Second}"));
        Assert.InRange(attempts[^1] - first, TimeSpan.FromDays(2.5), TimeSpan.FromDays(3));
        Assert.Empty(await queue.RefusingAsync());
    }

    [Fact]
    public async Task Nobody_is_written_to_in_quiet_hours_and_the_mail_goes_out_when_they_end()
    {
        await using Queue queue = await Queue.WithMailsToAsync(Adviser, "partner@example.org");
        // 11:00 UTC is 6:00 in Chicago and 13:00 in Berlin.
        var night = new QuietHours(new TimeOnly(21, 0), new TimeOnly(7, 0));
        queue.Recipients =
        [
            new Recipient { Address = Adviser, Quiet = night },
            new Recipient { Address = "partner@example.org", Quiet = night, TimeZone = "Europe/Berlin" },
        ];
        var channel = new Told(_ => Taken);

        DeliveryReport report = await queue.DeliverAsync(channel);

        Assert.Equal([Queue.Id(2)], channel.Tried);
        Assert.Equal((0, 0, 1), (report.Waiting, report.Troubles.Count, report.Delivered));
        UndeliveredMessage waiting = Assert.Single((await queue.UndeliveredAsync()).Values);
        Assert.Equal((Kept.Morning.AddHours(1), 0), (waiting.NextAttempt, waiting.Attempts));
        queue.Time.SetUtcNow(Kept.Morning.AddHours(1));
        Assert.Equal(1, (await queue.DeliverAsync(channel)).Delivered);
    }

    [Fact]
    public async Task A_repetition_that_would_fall_into_quiet_hours_waits_for_their_end()
    {
        await using Queue queue = await Queue.WithMailsToAsync(Adviser);
        queue.Recipients = [new Recipient { Address = Adviser, Quiet = new QuietHours(new TimeOnly(6, 1), new TimeOnly(9, 0)) }];

        await queue.DeliverAsync(new Told(_ => Busy));

        Assert.Equal(Kept.Morning.AddHours(3), Assert.Single((await queue.UndeliveredAsync()).Values).NextAttempt);
    }

    [Fact]
    public async Task However_slow_the_server_is_no_other_worker_gets_a_mail_that_is_in_hand()
    {
        await using Queue queue = await Queue.WithMailsToAsync([.. Enumerable.Range(1, 12).Select(number => $"reader{number}@example.org")]);
        var sent = new List<string>();
        var channel = new Told(_ => Taken)
        {
            LongestDelivery = TimeSpan.FromMinutes(20),
            While = async mail =>
            {
                queue.Time.Advance(TimeSpan.FromMinutes(19));
                IReadOnlyList<ClaimedMessage> others = await queue.Outbox.ClaimDueAsync(queue.Time.GetUtcNow(), TimeSpan.FromMinutes(1), 20, TestContext.Current.CancellationToken);
                Assert.DoesNotContain(others, each => each.Message.MessageId == mail.MessageId);
                foreach (ClaimedMessage other in others) await queue.Outbox.ReleaseAsync(other, TestContext.Current.CancellationToken);
                sent.Add(mail.MessageId!);
            },
        };

        Assert.Equal(12, (await queue.DeliverAsync(channel)).Delivered);
        Assert.Equal(12, sent.Distinct(StringComparer.Ordinal).Count());
    }

    /// <summary>A channel that does what it is told.</summary>
    private sealed class Told(Func<string, DeliveryOutcome> outcome) : IDeliveryChannel
    {
        public List<string> Tried { get; } = [];

        public Func<MimeMessage, Task> While { get; init; } = _ => Task.CompletedTask;

        public string Name => "a channel of the tests";

        public TimeSpan LongestDelivery { get; init; } = TimeSpan.FromMinutes(1);

        public async Task<DeliveryOutcome> DeliverAsync(MimeMessage message, CancellationToken stop)
        {
            Tried.Add(message.MessageId!);
            await While(message);
            return outcome(message.To.Mailboxes.Single().Address);
        }

        public ValueTask DisposeAsync() => ValueTask.CompletedTask;
    }
}
