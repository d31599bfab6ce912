using GddWatch.Tests.Commands;
using MimeKit;
using Xunit;

namespace GddWatch.Tests.Watching;

/// <summary>Mails that could not be delivered while the lawn went on, and people whose mailbox was away, with whole passes of the worker.</summary>
public sealed class HeldUpMailTests
{
    private static readonly DateOnly FirstDay = new(2012, 1, 1);

    // Nothing listens on port 9 of this machine.
    private const string Down = """{ "Mail": { "Host": "127.0.0.1", "Port": "9", "Security": "none", "From": "service@example.org" } }""";

    [Fact]
    public async Task A_mail_whose_window_closed_while_it_waited_is_replaced_by_word_of_the_close()
    {
        using Workshop workshop = Workshop.WithOneLawn("");
        Assert.Equal(1, await PassWhileDownAsync(workshop, new DateOnly(2025, 4, 25)));
        PutOn(workshop, new DateOnly(2025, 5, 20));

        Ran ran = await workshop.RunAsync("watch", "--once");

        Assert.True(ran.Code == 0, ran.Error);
        string mail = Assert.Single(Mails(workshop), each => each.Contains("Spring pre-emergent", StringComparison.Ordinal));
        Assert.Contains("The Lawn: Spring pre-emergent window closed on", mail, StringComparison.Ordinal);
        Assert.Contains("A mail of Saturday 26 April 2025 about this window was held up on its way and is out of date", mail, StringComparison.Ordinal);
        Assert.DoesNotContain("Not delivered", (await workshop.RunAsync("status")).Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_mail_that_is_still_true_goes_out_as_it_was_queued()
    {
        using Workshop workshop = Workshop.WithOneLawn("");
        Assert.Equal(1, await PassWhileDownAsync(workshop, new DateOnly(2025, 4, 20)));
        PutOn(workshop, new DateOnly(2025, 4, 21));

        Assert.Equal(0, (await workshop.RunAsync("watch", "--once")).Code);

        string mail = Assert.Single(Mails(workshop));
        Assert.Contains("Spring pre-emergent window open since", mail, StringComparison.Ordinal);
        Assert.DoesNotContain("held up", mail, StringComparison.Ordinal);
    }

    /// <summary>A pass in which no mail gets through, so that its mails wait; gives the exit code.</summary>
    private static async Task<int> PassWhileDownAsync(Workshop workshop, DateOnly day)
    {
        string settings = Path.Combine(workshop.Config, "appsettings.json");
        string folderOnly = await File.ReadAllTextAsync(settings, TestContext.Current.CancellationToken);
        await File.WriteAllTextAsync(settings, Down, TestContext.Current.CancellationToken);
        PutOn(workshop, day);
        Ran ran = await workshop.RunLettingTimePassAsync("watch", "--once");
        await File.WriteAllTextAsync(settings, folderOnly, TestContext.Current.CancellationToken);
        return ran.Code;
    }

    private static void PutOn(Workshop workshop, DateOnly day)
    {
        workshop.WriteWeather(SmoothWeather.Csv(FirstDay, day));
        workshop.PutClockTo(new DateTimeOffset(day.AddDays(1).ToDateTime(new TimeOnly(12, 0)), TimeSpan.Zero));
    }

    private static string[] Mails(Workshop workshop) =>
    [
        .. workshop.Mails.Values
            .Select(bytes => MimeMessage.Load(new MemoryStream(bytes)))
            .Where(mail => mail.To.Mailboxes.Single().Address == "adviser@example.org")
            .Select(mail => string.Join(' ', $"{mail.Subject} {mail.TextBody}".Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries))),
    ];
}
