using GddWatch.Tests.Commands;
using MimeKit;
using Xunit;

namespace GddWatch.Tests.Watching;

/// <summary>The worker by single passes, as a scheduler runs it, on stated days.</summary>
public sealed class WatchOnceTests
{
    private static readonly DateOnly FirstDay = new(2012, 1, 1);

    [Fact]
    public async Task A_window_found_open_at_the_first_start_gives_one_open_since_mail_and_closed_ones_are_silent()
    {
        using Workshop workshop = LawnOn(new DateOnly(2025, 4, 25));
        Assert.Equal(0, (await workshop.RunAsync("watch", "--once")).Code);
        string mail = Assert.Single(Bodies(workshop, "adviser"));
        Assert.Contains("The Lawn: Spring pre-emergent window open since", mail, StringComparison.Ordinal);
        await workshop.RunAsync("watch", "--once");
        Assert.Single(Bodies(workshop, "adviser"));
        using Workshop autumn = LawnOn(new DateOnly(2025, 12, 20));
        await autumn.RunAsync("watch", "--once");
        Assert.Empty(Bodies(autumn, "adviser"));
    }

    [Fact]
    public async Task Passing_every_day_gives_the_same_mails_as_a_replay_of_those_days()
    {
        DateOnly from = new(2025, 3, 20);
        DateOnly until = new(2025, 5, 10);
        using Workshop live = LawnOn(from);
        for (DateOnly day = from; day <= until; day = day.AddDays(1))
        {
            // The pass of the next morning sees the weather of this day.
            PutOn(live, day);
            await live.RunAsync("watch", "--once");
        }

        using Workshop replay = LawnOn(until);
        await replay.RunAsync("replay", "--from", $"{from:yyyy-MM-dd}", "--until", $"{until:yyyy-MM-dd}");
        Assert.NotEmpty(replay.ReplayMails);
        Assert.Equal(replay.ReplayMails.Keys, live.Mails.Keys);
    }

    [Fact]
    public async Task A_new_recipient_hears_of_what_is_open_and_nobody_else_hears_again()
    {
        using Workshop workshop = LawnOn(new DateOnly(2025, 4, 25));
        await workshop.RunAsync("watch", "--once");
        workshop.WriteRegion(recipients: "adviser@example.org partner@example.org");
        PutOn(workshop, new DateOnly(2025, 4, 26));
        await workshop.RunAsync("watch", "--once");
        Assert.Single(Bodies(workshop, "adviser"));
        Assert.Contains("The Lawn: Spring pre-emergent window open since", Assert.Single(Bodies(workshop, "partner")), StringComparison.Ordinal);
        Assert.Empty(Bodies(workshop, "operator"));
    }

    [Fact]
    public async Task After_days_of_downtime_only_the_present_state_is_told()
    {
        using Workshop workshop = LawnOn(new DateOnly(2025, 4, 25));
        await workshop.RunAsync("watch", "--once");
        PutOn(workshop, new DateOnly(2025, 5, 20));
        await workshop.RunAsync("watch", "--once");
        string[] mails = Bodies(workshop, "adviser");
        Assert.DoesNotContain(mails, mail => mail.Contains("Spring pre-emergent window past its best since", StringComparison.Ordinal));
        Assert.Single(mails, mail => mail.Contains("Spring pre-emergent window closed on", StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_change_of_the_configuration_sends_no_correction_but_stands_in_status_and_is_told_to_the_operator()
    {
        using Workshop workshop = LawnOn(new DateOnly(2025, 4, 25));
        await workshop.RunAsync("watch", "--once");
        string treatments = Path.Combine(workshop.Config, "treatments.yaml");
        File.WriteAllText(treatments, File.ReadAllText(treatments).Replace("rises-above: 49 °F", "rises-above: 64 °F", StringComparison.Ordinal).Replace("rises-above: 58 °F", "rises-above: 72 °F", StringComparison.Ordinal).Replace("usual: 55 °F", "usual: 66 °F", StringComparison.Ordinal));
        PutOn(workshop, new DateOnly(2025, 4, 26));
        await workshop.RunAsync("watch", "--once");
        Assert.Single(Bodies(workshop, "adviser"));
        string toOperator = Assert.Single(Bodies(workshop, "operator"));
        Assert.Contains("Spring pre-emergent at The Lawn", toOperator, StringComparison.Ordinal);
        Assert.Contains("by the new configuration it was waiting", toOperator, StringComparison.Ordinal);
        Ran status = await workshop.RunAsync("status", "--format", "json");
        Assert.Contains("by the new configuration it was waiting", status.Output, StringComparison.Ordinal);
        PutOn(workshop, new DateOnly(2025, 4, 27));
        await workshop.RunAsync("watch", "--once");
        Assert.Single(Bodies(workshop, "operator"));
    }

    [Fact]
    public async Task Weather_that_came_late_is_not_taken_for_a_change_of_the_configuration()
    {
        using Workshop workshop = LawnOn(new DateOnly(2025, 4, 14));
        workshop.PutClockTo(new DateTimeOffset(2025, 4, 17, 12, 0, 0, TimeSpan.Zero));
        await workshop.RunAsync("watch", "--once");
        string treatments = Path.Combine(workshop.Config, "treatments.yaml");
        File.WriteAllText(treatments, File.ReadAllText(treatments).Replace("reaches: 2150 °F-days", "reaches: 2151 °F-days", StringComparison.Ordinal));
        PutOn(workshop, new DateOnly(2025, 4, 25));
        await workshop.RunAsync("watch", "--once");
        Assert.Single(Bodies(workshop, "adviser"));
        Assert.Empty(Bodies(workshop, "operator"));
    }

    [Fact]
    public async Task Weather_that_has_stopped_coming_opens_nothing_and_is_told_to_the_operator_once()
    {
        using Workshop workshop = LawnOn(new DateOnly(2025, 2, 1));
        workshop.PutClockTo(new DateTimeOffset(2025, 5, 1, 12, 0, 0, TimeSpan.Zero));
        await workshop.RunAsync("watch", "--once");
        workshop.Clock.Advance(TimeSpan.FromDays(1));
        await workshop.RunAsync("watch", "--once");
        Assert.Empty(Bodies(workshop, "adviser"));
        Assert.Contains("Saturday 1 February 2025", Assert.Single(Bodies(workshop, "operator")), StringComparison.Ordinal);
        Ran status = await workshop.RunAsync("status");
        Assert.Contains("unknown", status.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_feed_that_corrects_past_days_gives_one_correction_and_no_second_opening()
    {
        using Workshop workshop = LawnOn(new DateOnly(2025, 4, 25));
        await workshop.RunAsync("watch", "--once");
        Assert.Contains("Spring pre-emergent window open since", Assert.Single(Bodies(workshop, "adviser")), StringComparison.Ordinal);
        for (DateOnly day = new(2025, 4, 26); day <= new DateOnly(2025, 5, 9); day = day.AddDays(1))
        {
            // The source has found that its thermometer showed too much in March and April.
            workshop.PutClockTo(new DateTimeOffset(day.AddDays(1).ToDateTime(new TimeOnly(12, 0)), TimeSpan.Zero));
            workshop.WriteWeather(SmoothWeather.Csv(FirstDay, day, each => each.Year == 2025 && each > new DateOnly(2025, 3, 1) && each < new DateOnly(2025, 5, 1) ? -8 : 0));
            await workshop.RunAsync("watch", "--once");
        }

        string[] mails = Bodies(workshop, "adviser");
        Assert.Single(mails, mail => mail.Contains("correction, Spring pre-emergent window is not open after all", StringComparison.Ordinal));
        Assert.Single(mails, mail => mail.Contains("you were told that it had not opened", StringComparison.Ordinal));
        Assert.Equal(3, mails.Count(mail => mail.Contains("Spring pre-emergent", StringComparison.Ordinal)));
    }

    [Fact]
    public async Task A_corrected_day_that_changes_nothing_that_was_told_sends_nothing()
    {
        using Workshop workshop = LawnOn(new DateOnly(2025, 4, 25));
        await workshop.RunAsync("watch", "--once");
        workshop.PutClockTo(new DateTimeOffset(2025, 4, 27, 12, 0, 0, TimeSpan.Zero));
        workshop.WriteWeather(SmoothWeather.Csv(FirstDay, new DateOnly(2025, 4, 26), each => each == new DateOnly(2025, 2, 3) ? 2 : 0));
        await workshop.RunAsync("watch", "--once");
        Assert.Single(Bodies(workshop, "adviser"));
    }

    [Fact]
    public async Task A_mail_server_that_is_down_loses_nothing_and_the_exit_code_says_so()
    {
        using Workshop workshop = LawnOn(new DateOnly(2025, 4, 25));
        string settings = Path.Combine(workshop.Config, "appsettings.json");
        string folderOnly = File.ReadAllText(settings);
        // Port 9 of this machine: nothing listens there.
        File.WriteAllText(settings, """{ "Mail": { "Host": "127.0.0.1", "Port": "9", "Security": "none", "From": "service@example.org" } }""");
        Ran down = await workshop.RunLettingTimePassAsync("watch", "--once");
        Assert.Equal(1, down.Code);
        Assert.DoesNotContain("   at GddWatch", down.Error, StringComparison.Ordinal);
        Assert.Empty(workshop.Mails);
        Ran status = await workshop.RunAsync("status");
        Assert.Matches(@"Not delivered: the mail of Saturday 26 April 2025 to adviser@example\.org, tried once, next try from 2025-04-26 12:\d\d UTC on; The mail server 127\.0\.0\.1:9 could not be reached", status.Output);
        File.WriteAllText(settings, folderOnly);
        workshop.PutClockTo(workshop.Clock.GetUtcNow().AddHours(8));
        await workshop.RunAsync("watch", "--once");
        Assert.Single(Bodies(workshop, "adviser"));
    }

    [Fact]
    public async Task A_lawn_without_a_readable_feed_is_unknown_and_the_others_are_not_affected()
    {
        using Workshop workshop = Workshop.WithSamples();
        workshop.PutClockTo(new DateTimeOffset(2025, 5, 16, 12, 0, 0, TimeSpan.Zero));
        File.Delete(Path.Combine(workshop.Folder, "data-samples", "quarry-park.csv"));
        await workshop.RunAsync("watch", "--once");
        Assert.Contains(Bodies(workshop, "adviser"), mail => mail.Contains("North Common:", StringComparison.Ordinal));
        Assert.DoesNotContain(Bodies(workshop, "adviser"), mail => mail.Contains("Quarry Park:", StringComparison.Ordinal));
        Assert.Contains("quarry-park.csv", string.Join('\n', Bodies(workshop, "operator")), StringComparison.Ordinal);
    }

    /// <summary>A lawn whose weather reaches to a day, on the morning after it.</summary>
    private static Workshop LawnOn(DateOnly day)
    {
        Workshop workshop = Workshop.WithOneLawn(SmoothWeather.Csv(FirstDay, day));
        PutOn(workshop, day);
        return workshop;
    }

    private static void PutOn(Workshop workshop, DateOnly day)
    {
        workshop.WriteWeather(SmoothWeather.Csv(FirstDay, day));
        workshop.PutClockTo(new DateTimeOffset(day.AddDays(1).ToDateTime(new TimeOnly(12, 0)), TimeSpan.Zero));
    }

    private static string[] Bodies(Workshop workshop, string to) =>
    [
        .. workshop.Mails.Values
            .Select(bytes => MimeMessage.Load(new MemoryStream(bytes)))
            .Where(mail => mail.To.Mailboxes.Single().Address == $"{to}@example.org")
            .Select(mail => string.Join(' ', $"{mail.Subject} {mail.TextBody}".Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries))),
    ];
}
