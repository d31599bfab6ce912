using GddWatch.Agronomy.Journal;
using GddWatch.Agronomy.Quantities;
using GddWatch.Storage;
using Xunit;

namespace GddWatch.Tests.Storage;

public abstract class JournalStoreTests(DatabaseKind kind) : IAsyncDisposable
{
    private static readonly DateOnly Day = new(2026, 4, 12);

    private readonly TestDatabase place = new(kind);

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public async ValueTask DisposeAsync()
    {
        await place.DisposeAsync();
        GC.SuppressFinalize(this);
    }

    [Fact]
    public async Task Every_kind_of_entry_comes_back_as_it_was_in_the_order_of_recording_even_after_opening_anew()
    {
        JournalEntry[] entries =
        [
            new TreatmentDone { SiteId = "b", On = Day, Treatment = "overseeding", Note = "größer, \"quoted\"; '--" },
            new TreatmentDone { SiteId = "a", On = Day.AddDays(-3), Treatment = "spring-pre-emergent", Active = "an active ingredient", NoSeedUntil = new DateOnly(2026, 8, 15) },
            new SoilReading { SiteId = "a", On = Day, At = new TimeOnly(8, 5), Depth = Depth.FromInches(2), Value = Temperature.FromFahrenheit(50) },
            new SoilReading { SiteId = "a", On = new DateOnly(2024, 2, 29), Depth = Depth.FromCentimetres(10), Value = Temperature.FromCelsius(-0.25) },
            new Sighting { SiteId = "a", On = Day, What = "first-beetle" },
            new Mowing { SiteId = "a", On = Day },
        ];
        await using (Database first = await place.OpenAsync(Stop)) await RecordAsync(first, entries);

        await using Database second = await place.OpenAsync(Stop);

        IReadOnlyList<KeptEntry> kept = await HistoryAsync(second);
        Assert.Equal(entries, kept.Select(each => each.Entry));
        Assert.Equal([1L, 2, 3, 4, 5, 6], kept.Select(each => each.Number));
        Assert.All(kept, each => Assert.Equal(Kept.Morning, each.RecordedAt));
        IReadOnlyDictionary<string, SiteJournal> journals = await new JournalStore(second).LoadAsync(Stop);
        Assert.Equal(["a", "b"], journals.Keys.Order(StringComparer.Ordinal));
        Assert.Equal([entries[3], entries[1], entries[2], entries[4], entries[5]], journals["a"].Entries);
    }

    [Fact]
    public async Task Retyping_changes_nothing_whatever_way_a_depth_was_written()
    {
        await using Database database = await place.OpenAsync(Stop);
        // Each hundredth of an inch that a thermometer may reach, once in inches and once in centimetres (1 inch is 2.54 cm by definition).
        SoilReading[] inches = [.. Enumerable.Range(79, 709).Select(i => Reading(Depth.FromInches(i / 100.0)))];
        SoilReading[] centimetres = [.. Enumerable.Range(79, 709).Select(i => Reading(Depth.FromCentimetres((double)(i * 0.0254m))))];
        await RecordAsync(database, inches);
        IReadOnlyList<KeptEntry> before = await HistoryAsync(database);

        Assert.All(await RecordAsync(database, inches), outcome => Assert.Equal(JournalChange.AlreadyThere, outcome.Change));
        Assert.All(await RecordAsync(database, centimetres), outcome => Assert.Equal(JournalChange.AlreadyThere, outcome.Change));
        Assert.Equal(before, await HistoryAsync(database));
        Assert.Equal(709, before.Count);
    }

    [Theory]
    [InlineData("no mowing")]
    [InlineData("another day")]
    [InlineData("another site")]
    [InlineData("another time")]
    [InlineData("another depth")]
    public async Task What_is_about_something_else_stands_beside_it(string what)
    {
        await using Database database = await place.OpenAsync(Stop);
        SoilReading reading = Reading(Depth.FromCentimetres(5));
        JournalEntry other = what switch
        {
            "no mowing" => new Mowing { SiteId = "a", On = Day },
            "another day" => reading with { On = Day.AddDays(1) },
            "another site" => reading with { SiteId = "b" },
            "another time" => reading with { At = new TimeOnly(18, 0) },
            _ => reading with { Depth = Depth.FromCentimetres(10) },
        };

        IReadOnlyList<JournalOutcome> outcomes = await RecordAsync(database, reading, other);

        Assert.All(outcomes, outcome => Assert.Equal((JournalChange.Recorded, 0), (outcome.Change, outcome.Mended.Count)));
        Assert.All(await HistoryAsync(database), kept => Assert.True(kept.IsInForce));
    }

    [Fact]
    public async Task The_same_thing_in_other_words_stands_for_the_earlier_entry_which_is_kept()
    {
        await using Database database = await place.OpenAsync(Stop);
        var plain = new TreatmentDone { SiteId = "a", On = Day, Treatment = "overseeding" };
        TreatmentDone[] tellings = [plain, plain with { Active = "x" }, plain with { Active = "x", NoSeedUntil = Day }, plain with { Note = "north half" }, plain];
        foreach (TreatmentDone telling in tellings) await RecordAsync(database, telling);

        IReadOnlyList<KeptEntry> history = await HistoryAsync(database);

        Assert.Equal(tellings, history.Select(kept => kept.Entry));
        Assert.Equal([2L, 3, 4, 5, null], history.Select(kept => kept.ReplacedBy));
        Assert.Equal([plain], (await new JournalStore(database).LoadAsync(Stop))["a"].Entries);
    }

    [Fact]
    public async Task A_wrong_day_is_mended_by_number_and_saying_so_twice_changes_nothing()
    {
        await using Database database = await place.OpenAsync(Stop);
        await RecordAsync(database, new Mowing { SiteId = "a", On = Day });
        JournalEntry right = new Mowing { SiteId = "b", On = Day.AddDays(1) };

        JournalOutcome first = await InsteadOfAsync(database, 1, right);
        IReadOnlyList<KeptEntry> after = await HistoryAsync(database);
        JournalOutcome again = await InsteadOfAsync(database, 1, right);

        Assert.Equal((JournalChange.Recorded, 2L), (first.Change, first.Number));
        Assert.Equal([1L], first.Mended);
        Assert.Equal((JournalChange.AlreadyThere, 2L, 0), (again.Change, again.Number, again.Mended.Count));
        Assert.Equal(after, await HistoryAsync(database));
        Assert.Equal([2L, null], after.Select(kept => kept.ReplacedBy));
    }

    [Fact]
    public async Task An_entry_that_stood_already_can_stand_for_a_wrong_one_too()
    {
        await using Database database = await place.OpenAsync(Stop);
        JournalEntry right = new Mowing { SiteId = "a", On = Day.AddDays(1) };
        await RecordAsync(database, new Mowing { SiteId = "a", On = Day }, right);

        JournalOutcome same = await InsteadOfAsync(database, 1, right);
        Assert.Equal((JournalChange.AlreadyThere, 2L), (same.Change, same.Number));
        Assert.Equal([1L], same.Mended);
        Assert.Equal([right], (await new JournalStore(database).LoadAsync(Stop))["a"].Entries);

        // And in other words it stands for both.
        await RecordAsync(database, new Mowing { SiteId = "a", On = Day.AddDays(2) });
        JournalOutcome both = await InsteadOfAsync(database, 3, right with { Note = "with the new mower" });
        Assert.Equal([3L, 2], both.Mended);
        Assert.Equal([2L, 4, 4, null], (await HistoryAsync(database)).Select(kept => kept.ReplacedBy));
    }

    [Fact]
    public async Task A_number_that_does_not_stand_is_refused_with_what_became_of_it_and_changes_nothing()
    {
        await using Database database = await place.OpenAsync(Stop);
        JournalStore store = new(database);
        JournalEntry entry = new Mowing { SiteId = "a", On = Day };
        await RecordAsync(database, entry);
        await InsteadOfAsync(database, 1, entry with { On = Day.AddDays(1) });
        await store.WithdrawAsync(2, "another lawn", Kept.Morning.AddHours(1), Stop);
        IReadOnlyList<KeptEntry> before = await HistoryAsync(database);

        foreach ((long number, string fate) in new[] { (1L, "it was mended by number 2"), (2L, "it was withdrawn: another lawn"), (3L, "There is no entry 3") })
        {
            Assert.Contains(fate, (await Assert.ThrowsAsync<JournalNumberException>(() => InsteadOfAsync(database, number, entry))).Message, StringComparison.Ordinal);
            Assert.Contains(fate, (await Assert.ThrowsAsync<JournalNumberException>(() => store.WithdrawAsync(number, "x", Kept.Morning, Stop))).Message, StringComparison.Ordinal);
        }

        Assert.Equal(before, await HistoryAsync(database));
        Assert.Equal((Kept.Morning.AddHours(1), "another lawn"), (before[1].WithdrawnAt, before[1].WithdrawnBecause));
        Assert.Empty(await store.LoadAsync(Stop));
        await Assert.ThrowsAsync<ArgumentException>(() => store.RecordAsync([entry, entry], 1, Kept.Morning, Stop));
    }

    [Fact]
    public async Task A_withdrawn_entry_typed_again_stands_again_under_a_new_number_but_a_file_does_not_bring_it_back()
    {
        await using Database database = await place.OpenAsync(Stop);
        JournalStore store = new(database);
        JournalEntry withdrawn = new Mowing { SiteId = "a", On = Day };
        JournalEntry mended = new Mowing { SiteId = "a", On = Day.AddDays(1) };
        JournalEntry other = new Mowing { SiteId = "a", On = Day.AddDays(9) };
        await RecordAsync(database, withdrawn, mended, mended with { Note = "half" });
        await store.WithdrawAsync(1, "another lawn", Kept.Morning, Stop);

        IReadOnlyList<JournalOutcome> imported = await store.ImportAsync([withdrawn, mended, mended with { Note = "half" }, other], Kept.Morning, Stop);

        Assert.Equal([JournalChange.LeftAside, JournalChange.LeftAside, JournalChange.AlreadyThere, JournalChange.Recorded], imported.Select(outcome => outcome.Change));
        Assert.Equal(["withdrawn: another lawn", "mended by number 3", null, null], imported.Select(outcome => outcome.Earlier?.Fate));
        Assert.Equal(5, Assert.Single(await RecordAsync(database, withdrawn)).Number);
        Assert.Equal(JournalChange.AlreadyThere, Assert.Single(await store.ImportAsync([withdrawn], Kept.Morning, Stop)).Change);
    }

    [Fact]
    public async Task A_batch_that_fails_on_its_way_leaves_nothing_of_itself()
    {
        await using Database database = await place.OpenAsync(Stop);
        JournalEntry first = new Mowing { SiteId = "a", On = Day };
        await RecordAsync(database, first);
        await place.RunAsync(
            kind == DatabaseKind.File
                ? "create trigger full before insert on journal_entry when new.note = 'last' begin select raise(abort, 'disk full'); end"
                : "alter table journal_entry add constraint disk_full check (note <> 'last')",
            Stop);

        await Assert.ThrowsAsync<StorageException>(() => RecordAsync(
            database, first with { Note = "mended" }, new Mowing { SiteId = "b", On = Day }, new Mowing { SiteId = "c", On = Day, Note = "last" }));

        KeptEntry kept = Assert.Single(await HistoryAsync(database));
        Assert.True(kept.IsInForce);
        Assert.Equal(first, kept.Entry);
        Assert.Equal(2, Assert.Single(await RecordAsync(database, new Mowing { SiteId = "b", On = Day })).Number);
    }

    [Fact]
    public async Task Two_that_record_the_same_at_once_record_it_once()
    {
        await using Database one = await place.OpenAsync(Stop);
        await using Database two = await place.OpenAsync(Stop);
        JournalEntry[] entries = [.. Enumerable.Range(0, 20).Select(i => new Mowing { SiteId = "a", On = Day.AddDays(i) })];

        await Task.WhenAll(entries.SelectMany(entry => new[] { one, two }.Select(database => Task.Run(() => RecordAsync(database, entry), Stop))));

        Assert.Equal(entries, (await HistoryAsync(one)).Select(kept => kept.Entry).OrderBy(entry => entry.On));
    }

    private static SoilReading Reading(Depth depth) => new() { SiteId = "a", On = Day, At = new TimeOnly(8, 0), Depth = depth, Value = Temperature.FromFahrenheit(51) };

    private static Task<IReadOnlyList<KeptEntry>> HistoryAsync(Database database) => new JournalStore(database).LoadHistoryAsync(Stop);

    private static Task<IReadOnlyList<JournalOutcome>> RecordAsync(Database database, params JournalEntry[] entries) =>
        new JournalStore(database).RecordAsync(entries, null, Kept.Morning, Stop);

    private static async Task<JournalOutcome> InsteadOfAsync(Database database, long number, JournalEntry entry) =>
        Assert.Single(await new JournalStore(database).RecordAsync([entry], number, Kept.Morning, Stop));
}

public sealed class SqliteJournalStoreTests() : JournalStoreTests(DatabaseKind.File);

public sealed class PostgresJournalStoreTests() : JournalStoreTests(DatabaseKind.Server);
