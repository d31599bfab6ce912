using System.Text.Json;
using CsCheck;
using GddWatch.Agronomy.Journal;
using GddWatch.Agronomy.Quantities;
using GddWatch.Storage;
using GddWatch.Watching;
using Xunit;

namespace GddWatch.Tests.Commands;

/// <summary>The journal as people write it on the command line and in files.</summary>
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
        Assert.Equal(1, (await workshop.RunAsync("record", "withdraw", "2", "--because", "again")).Code);
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
    [InlineData("--no-seed-until", "2026-01-10", "not after the day of the treatment")]
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
    public async Task An_import_keeps_its_good_rows_and_tells_all_faults_with_their_places()
    {
        using Workshop workshop = Workshop.WithSamples();
        string file = Path.Combine(workshop.Folder, "journal.csv");
        File.WriteAllText(file, """
            kind,site,on,treatment,depth,value,at
            done,north-common,2026-01-05,overseeding,,,
            mowing,north-comon,2026-01-06,,,,
            reading,mill-green,,,2 in,48 F,2026-01-07 07:30
            done,mill-green,yesterday,overseding,,,
            mowing,mill-green,,,,,
            mowing,mill-green,2026-01-08,,
            sprayed,mill-green,2026-01-08,,,,
            """);
        Ran ran = await workshop.RunAsync("record", "import", file);
        Assert.Equal(1, ran.Code);
        Assert.Contains("Recorded: 2. Already there: 0. Left out: 5.", ran.Output, StringComparison.Ordinal);
        foreach (string part in new[] { "line 3, column site", "line 5, column treatment", "line 5, column on", "line 6, column on", "line 7: The row has 5 cells", "line 8, column kind" })
        {
            Assert.Contains(part, ran.Error, StringComparison.Ordinal);
        }

        Assert.Contains("Recorded: 0. Already there: 2.", (await workshop.RunAsync("record", "import", file)).Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_file_with_an_unknown_column_or_none_at_all_records_nothing()
    {
        using Workshop workshop = Workshop.WithSamples();
        string file = Path.Combine(workshop.Folder, "journal.csv");
        File.WriteAllText(file, "kind,site,on,treatmant\ndone,north-common,2026-01-05,overseeding\n");
        Ran ran = await workshop.RunAsync("record", "import", file);
        Assert.Contains("\"treatment\" is the nearest", ran.Error, StringComparison.Ordinal);
        Assert.Equal(1, (await workshop.RunAsync("record", "import", Path.Combine(workshop.Folder, "none.csv"))).Code);
        Assert.Empty(await HistoryAsync(workshop));
    }

    [Fact]
    public async Task What_is_exported_is_imported_as_the_same_journal()
    {
        using Workshop workshop = Workshop.WithSamples();
        JournalEntry[] entries = [.. SomeEntries.Array[30].Single(_ => true, "0000KXKkWK54").DistinctBy(JournalKinds.Identity)];
        await using (Database database = await Database.OpenAsync(DataFolder.Database(workshop.Data), workshop.Clock, Stop))
        {
            await new JournalStore(database).RecordAsync(entries, null, workshop.Clock.GetUtcNow(), Stop);
        }

        string file = Path.Combine(workshop.Folder, "export.csv");
        Assert.Equal(0, (await workshop.RunAsync("record", "export", file)).Code);
        using Workshop other = Workshop.WithSamples();
        Ran import = await other.RunAsync("record", "import", file);
        Assert.Equal("", import.Error);
        Assert.Equal(entries, (await HistoryAsync(other)).Select(kept => kept.Entry));
        string all = Path.Combine(workshop.Folder, "all.csv");
        await workshop.RunAsync("record", "export", all, "--all");
        Assert.Contains($"Already there: {entries.Length}.", (await other.RunAsync("record", "import", all)).Output, StringComparison.Ordinal);
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

    private static readonly Gen<JournalEntry> SomeEntries = Gen.Select(Gen.Bool.Select(one => one ? "north-common" : "mill-green"), Gen.Int[0, 300], Gen.Int[0, 2].Select(i => new[] { "", "a, \"quoted\" note", "größer" }[i]), Gen.Int[0, 3], Gen.Double[2, 20]).Select(
        (site, days, note, kind, number) =>
        {
            var on = new DateOnly(2025, 1, 1).AddDays(days);
            JournalEntry entry = kind switch
            {
                0 => new TreatmentDone { SiteId = site, On = on, Note = note, Treatment = "overseeding", Active = note, NoSeedUntil = days % 2 == 0 ? on.AddDays(40) : null },
                1 => new SoilReading { SiteId = site, On = on, Note = note, At = days % 3 == 0 ? null : new TimeOnly(days % 24, days % 60), Depth = Depth.FromCentimetres(number), Value = Temperature.FromCelsius(number) },
                2 => new Sighting { SiteId = site, On = on, Note = note, What = "first-beetle" },
                _ => new Mowing { SiteId = site, On = on, Note = note },
            };
            return entry;
        });

    private static bool Told(Workshop workshop, string words) => workshop.Mails.Values
        .Select(bytes => MimeKit.MimeMessage.Load(new MemoryStream(bytes)).TextBody ?? "")
        .Any(text => string.Join(' ', text.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)).Contains(words, StringComparison.Ordinal));

    private static async Task<IReadOnlyList<KeptEntry>> HistoryAsync(Workshop workshop)
    {
        await using Database database = await Database.OpenAsync(DataFolder.Database(workshop.Data), workshop.Clock, Stop);
        return await new JournalStore(database).LoadHistoryAsync(Stop);
    }
}
