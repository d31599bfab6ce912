using System.Text.Json;
using GddWatch.Agronomy.Journal;
using GddWatch.Storage;
using GddWatch.Watching;
using Xunit;

namespace GddWatch.Tests.Commands;

/// <summary>The journal as people write it on the command line.</summary>
public sealed class RecordTests
{
    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_treatment_done_is_recorded_for_each_site_and_retyping_it_changes_nothing()
    {
        using Workshop workshop = Workshop.WithSamples();
        string[] entry = ["record", "done", "spring-pre-emergent", "--site", "north-common", "mill-green", "--on", "2026-01-10", "--active", "prodiamine", "--no-seed-until", "2026-08-15"];
        Ran first = await workshop.RunAsync(entry);
        Assert.Equal(0, first.Code);
        Assert.Contains("Recorded as number 1: Spring pre-emergent done at North Common on Saturday 10 January 2026, active ingredient prodiamine, no seed before Saturday 15 August 2026 by its label.", first.Output, StringComparison.Ordinal);
        Ran again = await workshop.RunAsync(entry);
        Assert.Equal(0, again.Code);
        Assert.Contains("Already recorded as number 1", again.Output, StringComparison.Ordinal);
        Assert.Equal(2, (await HistoryAsync(workshop)).Count);
    }

    [Fact]
    public async Task The_same_thing_in_other_words_mends_the_earlier_entry_which_is_kept()
    {
        using Workshop workshop = Workshop.WithSamples();
        await workshop.RunAsync("record", "done", "overseeding", "--site", "north-common", "--on", "2026-01-10");
        Ran mended = await workshop.RunAsync("record", "done", "overseeding", "--site", "north-common", "--on", "2026-01-10", "--note", "north half only");
        Assert.Contains("instead of number 1, which is kept", mended.Output, StringComparison.Ordinal);
        IReadOnlyList<KeptEntry> history = await HistoryAsync(workshop);
        Assert.Equal([2L, null], history.Select(kept => kept.ReplacedBy));
        Assert.DoesNotContain("mended by", (await workshop.RunAsync("record", "list")).Output, StringComparison.Ordinal);
        Assert.Contains("mended by number 2", (await workshop.RunAsync("record", "list", "--all")).Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_wrong_day_is_mended_by_number_and_an_entry_that_should_not_stand_is_withdrawn_with_its_reason()
    {
        using Workshop workshop = Workshop.WithSamples();
        await workshop.RunAsync("record", "mowing", "--site", "north-common", "--on", "2026-01-10");
        Assert.Equal(0, (await workshop.RunAsync("record", "mowing", "--site", "north-common", "--on", "2026-01-11", "--instead-of", "1")).Code);
        Assert.Equal(0, (await workshop.RunAsync("record", "withdraw", "2", "--because", "another lawn")).Code);
        Ran again = await workshop.RunAsync("record", "withdraw", "2", "--because", "again");
        Assert.Equal(2, again.Code);
        Assert.Contains("it was withdrawn: another lawn", again.Error, StringComparison.Ordinal);
        Assert.Contains("withdrawn: another lawn", (await workshop.RunAsync("record", "list", "--all")).Output, StringComparison.Ordinal);
        Assert.Contains("says nothing of what was done", (await workshop.RunAsync("record", "list")).Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task All_that_is_wrong_on_a_command_line_is_said_at_once_and_nothing_is_recorded()
    {
        using Workshop workshop = Workshop.WithSamples();
        Ran wrong = await workshop.RunAsync("record", "done", "overseding", "--site", "north-comon", "--on", "2026-02-30", "--no-seed-until", "soon");
        Assert.Equal(2, wrong.Code);
        foreach (string part in new[] { "\"overseeding\" is the nearest", "\"north-common\" is the nearest", "--on: This is not a day", "--no-seed-until" })
        {
            Assert.Contains(part, wrong.Error, StringComparison.Ordinal);
        }

        Assert.Empty(await HistoryAsync(workshop));
    }

    [Theory]
    [InlineData("--on", "2027-01-01", "still to come")]
    [InlineData("--on", "0206-01-10", "before the year 1900")]
    [InlineData("--no-seed-until", "2026-01-09", "before the day of the treatment")]
    public async Task A_day_that_cannot_be_is_refused(string option, string day, string problem)
    {
        using Workshop workshop = Workshop.WithSamples();
        string[] on = option == "--on" ? [] : ["--on", "2026-01-10"];
        Ran wrong = await workshop.RunAsync(["record", "done", "overseeding", "--site", "north-common", .. on, option, day]);
        Assert.Equal(2, wrong.Code);
        Assert.Contains(problem, wrong.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_reading_needs_its_units_and_a_depth_and_warmth_that_soil_can_have()
    {
        using Workshop workshop = Workshop.WithSamples();
        Assert.Equal(0, (await workshop.RunAsync("record", "reading", "--site", "north-common", "--at", "2026-01-12 08:00", "--depth", "5 cm", "--value", "51 °F")).Code);
        var reading = (SoilReading)(await HistoryAsync(workshop))[0].Entry;
        Assert.Equal(51, reading.Value.Fahrenheit, 9);
        Assert.Equal(new TimeOnly(8, 0), reading.At);
        Ran wrong = await workshop.RunAsync("record", "reading", "--site", "north-common", "--at", "2026-01-12 8 o'clock", "--depth", "3 ft", "--value", "51");
        Assert.Equal(2, wrong.Code);
        Assert.Contains("--at:", wrong.Error, StringComparison.Ordinal);
        Assert.Contains("--depth:", wrong.Error, StringComparison.Ordinal);
        Assert.Contains("needs its unit", wrong.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_label_that_allows_seed_at_once_is_recorded_so_and_holds_nothing()
    {
        using Workshop workshop = Workshop.WithSamples();
        workshop.PutClockTo(new DateTimeOffset(2025, 9, 1, 12, 0, 0, TimeSpan.Zero));
        Assert.Equal(0, (await workshop.RunAsync("record", "done", "spring-pre-emergent", "--site", "quarry-park", "--on", "2025-08-28", "--no-seed-until", "2025-08-28")).Code);
        Assert.Equal(0, (await workshop.RunAsync("record", "done", "spring-pre-emergent", "--site", "mill-green", "--on", "2025-08-28")).Code);
        using JsonDocument status = JsonDocument.Parse((await workshop.RunAsync("status", "--format", "json")).Output);
        string State(string site) => status.RootElement.EnumerateArray().First(row => row.GetProperty("site").GetString() == site && row.GetProperty("treatment").GetString() == "overseeding").GetProperty("state").GetString()!;
        Assert.NotEqual("held", State("quarry-park"));
        Assert.Equal("held", State("mill-green"));
    }

    [Fact]
    public async Task Today_is_the_sites_own_today()
    {
        using Workshop workshop = Workshop.WithSamples();
        // Half past three on Friday morning in Greenwich is Thursday evening in Chicago (six hours behind in winter, IANA time zones, common practice).
        workshop.PutClockTo(new DateTimeOffset(2026, 1, 16, 3, 30, 0, TimeSpan.Zero));
        Assert.Contains("on Thursday 15 January 2026", (await workshop.RunAsync("record", "mowing", "--site", "north-common")).Output, StringComparison.Ordinal);
        Assert.Equal(2, (await workshop.RunAsync("record", "mowing", "--site", "north-common", "--on", "2026-01-16")).Code);
    }

    [Fact]
    public async Task A_number_that_is_none_is_told_with_all_other_faults_and_no_database_is_made()
    {
        using Workshop workshop = Workshop.WithSamples();
        Ran wrong = await workshop.RunAsync("record", "reading", "--site", "north-comon", "--at", "2026-01-16 08:00", "--depth", "150 cm", "--value", "141 °F", "--instead-of", "one");
        Assert.Equal(2, wrong.Code);
        foreach (string part in new[] { "--site: ", "--at: This day is still to come", "from 2 cm to 20 cm", "from -30 °C to 60 °C", "--instead-of: This is not the number of an entry. Found: \"one\"" })
        {
            Assert.Contains(part, wrong.Error, StringComparison.Ordinal);
        }

        Assert.Contains("--instead-of: There is no such entry", (await workshop.RunAsync("record", "mowing", "--site", "north-common", "--instead-of", "7")).Error, StringComparison.Ordinal);
        Assert.Contains("one site", (await workshop.RunAsync("record", "mowing", "--site", "north-common", "mill-green", "--instead-of", "7")).Error, StringComparison.Ordinal);
        Ran withdraw = await workshop.RunAsync("record", "withdraw", "x", "--because", " ");
        Assert.Equal(2, withdraw.Code);
        Assert.Contains("NUMBER: ", withdraw.Error, StringComparison.Ordinal);
        Assert.Contains("--because: The reason is missing", withdraw.Error, StringComparison.Ordinal);
        Assert.Equal(0, (await workshop.RunAsync("record", "list")).Code);
        Assert.Equal(0, (await workshop.RunAsync("record", "export")).Code);
        Assert.False(Directory.Exists(workshop.Data));
    }

    [Theory]
    [InlineData("2 cm", "-30 °C", true)]
    [InlineData("20 cm", "140 °F", true)]
    [InlineData("1.9 cm", "10 °C", false)]
    [InlineData("7.9 in", "10 °C", false)]
    [InlineData("5 cm", "-30.1 °C", false)]
    [InlineData("5 cm", "140.1 °F", false)]
    [InlineData("5", "10 °C", false)]
    public async Task A_reading_is_taken_within_what_can_be_and_refused_without(string depth, string value, bool accepted)
    {
        using Workshop workshop = Workshop.WithSamples();
        Ran ran = await workshop.RunAsync("record", "reading", "--site", "north-common", "--at", "2026-01-12", "--depth", depth, "--value", value);
        Assert.Equal(accepted ? 0 : 2, ran.Code);
        Assert.Equal(accepted, ran.Output.Contains("Monday 12 January 2026, mean of the day", StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_sighting_is_said_short_and_plain()
    {
        using Workshop workshop = Workshop.WithSamples();
        Assert.Contains("first-beetle seen at Mill Green on Saturday 10 January 2026", (await workshop.RunAsync("record", "sighting", "first-beetle", "--site", "mill-green", "--on", "2026-01-10")).Output, StringComparison.Ordinal);
        Ran wrong = await workshop.RunAsync("record", "sighting", "First beetle!", "--site", "mill-green", "--note", "a\nb");
        Assert.Equal(2, wrong.Code);
        Assert.Contains("WHAT: ", wrong.Error, StringComparison.Ordinal);
        Assert.Contains("--note: ", wrong.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_list_shows_one_site_and_refuses_one_that_nobody_knows()
    {
        using Workshop workshop = Workshop.WithSamples();
        await workshop.RunAsync("record", "mowing", "--site", "north-common", "mill-green", "--on", "2026-01-10");
        await workshop.RunAsync("record", "reading", "--site", "mill-green", "--at", "2026-01-12 08:00", "--depth", "5 cm", "--value", "10.5 °C");
        Assert.DoesNotContain("North Common", (await workshop.RunAsync("record", "list", "--site", "mill-green")).Output, StringComparison.Ordinal);
        Ran wrong = await workshop.RunAsync("record", "list", "--site", "mil-green");
        Assert.Equal(2, wrong.Code);
        Assert.Contains("\"mill-green\" is the nearest", wrong.Error, StringComparison.Ordinal);
        using JsonDocument list = JsonDocument.Parse((await workshop.RunAsync("record", "list", "--format", "json")).Output);
        JsonElement reading = list.RootElement[2];
        Assert.Equal((3, 5, 10.5), (reading.GetProperty("number").GetInt64(), reading.GetProperty("depthCm").GetDouble(), reading.GetProperty("valueC").GetDouble()));
        Assert.Equal(("2026-01-12", "08:00"), (reading.GetProperty("on").GetString(), reading.GetProperty("at").GetString()));
        Assert.True(reading.GetProperty("inForce").GetBoolean());
    }

    [Fact]
    public async Task A_recorded_treatment_stands_as_done_in_status_and_holds_its_rival_with_the_day_that_frees_it()
    {
        using Workshop workshop = Workshop.WithSamples();
        workshop.PutClockTo(new DateTimeOffset(2025, 9, 1, 12, 0, 0, TimeSpan.Zero));
        await workshop.RunAsync("record", "done", "overseeding", "--site", "north-common", "--on", "2025-08-28");
        await workshop.RunAsync("record", "done", "spring-pre-emergent", "--site", "quarry-park", "--on", "2025-04-20", "--no-seed-until", "2025-09-20");
        using JsonDocument status = JsonDocument.Parse((await workshop.RunAsync("status", "--format", "json")).Output);
        JsonElement Row(string site, string treatment) => status.RootElement.EnumerateArray().First(row => row.GetProperty("site").GetString() == site && row.GetProperty("treatment").GetString() == treatment);
        Assert.Equal("done", Row("north-common", "overseeding").GetProperty("state").GetString());
        JsonElement held = Row("quarry-park", "overseeding");
        Assert.Equal("held", held.GetProperty("state").GetString());
        Assert.Equal("2025-09-20", held.GetProperty("heldUntil").GetString());
        Assert.Equal("2025-04-20", held.GetProperty("exclusions")[0].GetProperty("recorded").GetString());
        Assert.Equal("unknown", Row("mill-green", "overseeding").GetProperty("exclusions")[0].GetProperty("recorded").GetString());
    }

    [Fact]
    public async Task A_treatment_recorded_after_its_opening_was_told_stops_its_notices()
    {
        using Workshop workshop = Workshop.WithSamples();
        workshop.PutClockTo(new DateTimeOffset(2025, 9, 1, 12, 0, 0, TimeSpan.Zero));
        await workshop.RunAsync("watch", "--once");
        await workshop.RunAsync("record", "done", "overseeding", "--site", "north-common", "quarry-park", "mill-green", "--on", "2025-08-31");
        int before = workshop.Mails.Count;
        foreach (int month in Enumerable.Range(10, 3))
        {
            workshop.PutClockTo(new DateTimeOffset(2025, month, 20, 12, 0, 0, TimeSpan.Zero));
            await workshop.RunAsync("watch", "--once");
        }

        Assert.DoesNotContain(workshop.Mails.Keys.Skip(before), name => name.Contains("overseeding", StringComparison.Ordinal));
    }

    [Fact]
    public async Task A_recorded_first_application_starts_its_follow_up_six_weeks_later_and_tells_of_it()
    {
        using Workshop workshop = Workshop.WithSamples();
        workshop.PutClockTo(new DateTimeOffset(2025, 4, 12, 12, 0, 0, TimeSpan.Zero));
        await workshop.RunAsync("record", "done", "spring-pre-emergent", "--site", "north-common", "--on", "2025-04-10");
        await workshop.RunAsync("watch", "--once");
        Assert.False(Told(workshop, "North Common: Spring pre-emergent, second application window"));
        workshop.PutClockTo(new DateTimeOffset(2025, 5, 23, 12, 0, 0, TimeSpan.Zero));
        await workshop.RunAsync("watch", "--once");
        Assert.True(Told(workshop, "North Common: Spring pre-emergent, second application window open since Thursday 22 May 2025"));
        Assert.False(Told(workshop, "Quarry Park: Spring pre-emergent, second application window"));
    }

    private static bool Told(Workshop workshop, string words) => workshop.Mails.Values
        .Select(bytes => MimeKit.MimeMessage.Load(new MemoryStream(bytes)).TextBody ?? "")
        .Any(text => string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)).Contains(words, StringComparison.Ordinal));

    private static Task<IReadOnlyList<KeptEntry>> HistoryAsync(Workshop workshop) => Journals.LoadHistoryAsync(workshop.Keeping, Stop);
}
