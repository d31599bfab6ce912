using CsCheck;
using GddWatch.Agronomy.Journal;
using GddWatch.Storage;
using Xunit;

namespace GddWatch.Tests.Storage;

/// <summary>Any sequence of recording, mending and withdrawing leaves what the plain model says, and never loses an entry.</summary>
public abstract class JournalLawTests(DatabaseKind kind) : IAsyncDisposable
{
    private static readonly Gen<JournalEntry> SomeEntry = Gen.Select(Gen.Int[0, 3], Gen.Int[0, 1], Gen.Int[0, 1]).Select(
        JournalEntry (day, kind, note) => kind == 0
            ? new Mowing { SiteId = "a", On = Kept.Day.AddDays(day), Note = note == 0 ? "" : "n" }
            : new TreatmentDone { SiteId = "a", On = Kept.Day.AddDays(day), Treatment = "overseeding", Active = note == 0 ? "" : "x" });

    private static readonly Gen<Step> SomeStep = Gen.Frequency(
        (5, SomeEntry.Array[1, 3].Select(Step (entries) => new Step.Record(entries))),
        (3, SomeEntry.Array[1, 3].Select(Step (entries) => new Step.Import(entries))),
        (3, Gen.Select(Gen.Int[1, 12], SomeEntry).Select(Step (number, entry) => new Step.InsteadOf(number, entry))),
        (2, Gen.Int[1, 12].Select(Step (number) => new Step.Withdraw(number))));

    private readonly TestDatabase place = new(kind);

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public async ValueTask DisposeAsync()
    {
        await place.DisposeAsync();
        GC.SuppressFinalize(this);
    }

    [Fact]
    public async Task Any_sequence_of_recording_mending_and_withdrawing_ends_as_the_model_says()
    {
        await using Database database = await place.OpenAsync(Stop);
        int mended = 0, aside = 0, refused = 0;
        await SomeStep.Array[1, 25].SampleAsync(
            async steps =>
            {
                await place.EmptyAsync(Stop);
                var model = new Model();
                foreach (Step step in steps)
                {
                    bool done = await TakeAsync(new JournalStore(database), step);
                    Assert.Equal(model.Take(step), done);
                    IReadOnlyList<KeptEntry> history = await new JournalStore(database).LoadHistoryAsync(Stop);
                    Assert.Equal(model.Entries, history.Select(kept => (kept.Entry, kept.ReplacedBy, kept.WithdrawnAt is not null)));
                    Assert.Equal(history.Count(kept => kept.IsInForce), history.Where(kept => kept.IsInForce).DistinctBy(kept => JournalKinds.Identity(kept.Entry)).Count());
                    refused += done ? 0 : 1;
                }

                mended += model.Entries.Count(entry => entry.ReplacedBy is not null);
                aside += model.Aside;
            },
            iter: 100,
            threads: 1);

        // The sequences really went everywhere.
        Assert.True(mended > 50 && aside > 20 && refused > 50, $"{mended} mended, {aside} left aside, {refused} refused");
    }

    private static async Task<bool> TakeAsync(JournalStore store, Step step)
    {
        try
        {
            switch (step)
            {
                case Step.Record record:
                    await store.RecordAsync(record.Entries, null, Kept.Morning, Stop);
                    break;
                case Step.Import import:
                    await store.ImportAsync(import.Entries, Kept.Morning, Stop);
                    break;
                case Step.InsteadOf insteadOf:
                    await store.RecordAsync([insteadOf.Entry], insteadOf.Number, Kept.Morning, Stop);
                    break;
                case Step.Withdraw withdraw:
                    await store.WithdrawAsync(withdraw.Number, "a slip", Kept.Morning, Stop);
                    break;
            }

            return true;
        }
        catch (JournalNumberException)
        {
            return false;
        }
    }

    private abstract record Step
    {
        public sealed record Record(JournalEntry[] Entries) : Step;

        public sealed record Import(JournalEntry[] Entries) : Step;

        public sealed record InsteadOf(int Number, JournalEntry Entry) : Step;

        public sealed record Withdraw(int Number) : Step;
    }

    /// <summary>The rules in their plainest form: a list that is looked through from the start each time.</summary>
    private sealed class Model
    {
        public List<(JournalEntry Entry, long? ReplacedBy, bool Withdrawn)> Entries { get; } = [];

        public int Aside { get; private set; }

        public bool Take(Step step)
        {
            switch (step)
            {
                case Step.Record record:
                    foreach (JournalEntry entry in record.Entries) Put(entry);
                    return true;
                case Step.Import import:
                    foreach (JournalEntry entry in import.Entries)
                    {
                        bool stood = Entries.Exists(each => each.Entry == entry);
                        if (stood && !Entries.Exists(each => each.Entry == entry && Stands(each))) Aside++;
                        else Put(entry);
                    }

                    return true;
                case Step.InsteadOf({ } number, var entry):
                    return PutInsteadOf(number, entry);
                case Step.Withdraw({ } number):
                    if (number > Entries.Count || !Stands(Entries[number - 1])) return false;
                    Entries[number - 1] = Entries[number - 1] with { Withdrawn = true };
                    return true;
                default:
                    return false;
            }
        }

        private static bool Stands((JournalEntry Entry, long? ReplacedBy, bool Withdrawn) each) => each.ReplacedBy is null && !each.Withdrawn;

        private static bool IsSameThing(JournalEntry one, JournalEntry two) => one.GetType() == two.GetType() && one.On == two.On;

        private int Put(JournalEntry entry)
        {
            int there = Entries.FindIndex(each => Stands(each) && each.Entry == entry);
            if (there >= 0) return there + 1;
            int same = Entries.FindIndex(each => Stands(each) && IsSameThing(each.Entry, entry));
            Entries.Add((entry, null, false));
            if (same >= 0) Entries[same] = Entries[same] with { ReplacedBy = Entries.Count };
            return Entries.Count;
        }

        private bool PutInsteadOf(int number, JournalEntry entry)
        {
            if (number > Entries.Count) return false;
            if (!Stands(Entries[number - 1]))
            {
                long? end = number;
                while (Entries[(int)end - 1].ReplacedBy is { } by) end = by;
                return Stands(Entries[(int)end - 1]) && Entries[(int)end - 1].Entry == entry;
            }

            int by2 = Put(entry);
            if (by2 != number) Entries[number - 1] = Entries[number - 1] with { ReplacedBy = by2 };
            return true;
        }
    }
}

public sealed class SqliteJournalLawTests() : JournalLawTests(DatabaseKind.File);

public sealed class PostgresJournalLawTests() : JournalLawTests(DatabaseKind.Server);
