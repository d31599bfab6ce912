using CsCheck;
using GddWatch.Agronomy.Changes;
using GddWatch.Storage;
using Xunit;

namespace GddWatch.Tests.Storage;

/// <summary>Any sequence of passes, claims, outcomes and restarts leaves the database as the plain model says.</summary>
public abstract class QueueLawTests(DatabaseKind kind) : IAsyncDisposable
{
    private const int Runs = 120;
    private const ulong Seed = 20260412;

    private static readonly TimeSpan Hold = TimeSpan.FromMinutes(5);

    private static readonly string[] Addresses = ["a@example.org", "b@example.org", "c@example.org"];

    private static readonly Gen<Step> Steps = Gen.Frequency(
        (4, Gen.Select(Gen.Int[0, 9], Gen.Int[0, 2], Gen.Int[1, 3], Gen.Int[0, 20]).Array[1, 3].Select(Step (messages) => new Step.Pass(messages))),
        (4, Gen.Int[1, 4].Select(Step (most) => new Step.Claim(most))),
        (8, Gen.Select(Gen.Int[0, 100], Gen.Int[0, 4], Gen.Int[0, 20]).Select(Step (which, what, minutes) => new Step.Record(which, what, minutes))),
        (3, Gen.Int[0, 8].Select(Step (minutes) => new Step.Wait(minutes))),
        (1, Gen.Const<Step>(new Step.Restart())));

    private readonly TestDatabase place = new(kind);

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public async ValueTask DisposeAsync()
    {
        await place.DisposeAsync();
        GC.SuppressFinalize(this);
    }

    [Fact]
    public async Task Any_sequence_of_passes_claims_outcomes_and_restarts_ends_as_the_model_says()
    {
        await using Database first = await place.OpenAsync(Stop);
        PCG chance = new(stream: 1, seed: Seed);
        Gen<Step[]> sequences = Steps.Array[5, 60];
        Tally tally = new();
        for (int run = 0; run < Runs; run++)
        {
            await place.EmptyAsync(Stop);
            Step[] steps = sequences.Generate(chance, null, out _);
            await using Life life = new(place, await place.OpenAsync(Stop), tally);
            for (int i = 0; i < steps.Length; i++)
                await life.TakeAsync(steps[i], $"run {run}, step {i} of [{string.Join(", ", steps.Take(i + 1))}]");
        }

        // The sequences really went everywhere.
        Assert.True(tally is { Passes: > 100, Clashes: > 100, Claimed: > 100, Recorded: > 100, TooLate: > 100 }, tally.ToString());
    }

    private abstract record Step
    {
        /// <summary>Each message: which notice, for whom, how many notices, minutes to wait.</summary>
        public sealed record Pass((int Notice, int Person, int Notices, int Minutes)[] Messages) : Step;

        public sealed record Claim(int Most) : Step;

        public sealed record Record(int Which, int What, int Minutes) : Step;

        public sealed record Wait(int Minutes) : Step;

        public sealed record Restart : Step;
    }

    private sealed record Tally
    {
        public int Passes { get; set; }

        public int Clashes { get; set; }

        public int Claimed { get; set; }

        public int Recorded { get; set; }

        public int TooLate { get; set; }
    }

    private sealed class Life(TestDatabase place, Database database, Tally tally) : IAsyncDisposable
    {
        private readonly QueueModel model = new();
        private readonly List<(ClaimedMessage Message, QueueModel.Entry Entry, int Claim)> inHand = [];
        private Database current = database;
        private DateTimeOffset now = Kept.Morning;

        private Outbox Outbox => new(current);

        public ValueTask DisposeAsync() => current.DisposeAsync();

        public async Task TakeAsync(Step step, string where)
        {
            switch (step)
            {
                case Step.Pass pass:
                    await CommitAsync(pass, where);
                    break;
                case Step.Claim claim:
                    await ClaimAsync(claim.Most, where);
                    break;
                case Step.Record record when inHand.Count > 0:
                    await RecordAsync(record, where);
                    break;
                case Step.Wait wait:
                    now = now.AddMinutes(wait.Minutes);
                    break;
                case Step.Restart:
                    await current.DisposeAsync();
                    current = await place.OpenAsync(Stop);
                    break;
            }

            await CompareAsync(where);
        }

        private async Task CommitAsync(Step.Pass pass, string where)
        {
            // The id follows from person and first notice alone, so that the same id sometimes comes with other notices.
            (Message Message, DateTimeOffset NotBefore)[] messages =
            [
                .. pass.Messages.Select(one => (
                    Kept.Message(
                        $"<{one.Notice}.{one.Person}@x>",
                        Addresses[one.Person],
                        [.. Enumerable.Range(one.Notice, one.Notices).Select(i => Kept.Key(season: 2000 + i))]),
                    now.AddMinutes(one.Minutes))),
            ];
            bool accepted = model.TryQueue(messages);
            Task<int> commit = new PassStore(current).CommitAsync(
                Kept.Pass() with { At = now, Messages = [.. messages.Select(one => new QueuedMessage(one.Message, one.NotBefore))] }, Stop);
            if (accepted)
                await commit;
            else
                Assert.True(await Record.ExceptionAsync(() => commit) is StorageException, where);
            tally.Passes += accepted ? 1 : 0;
            tally.Clashes += accepted ? 0 : 1;
        }

        private async Task ClaimAsync(int most, string where)
        {
            IReadOnlyList<ClaimedMessage> claimed = await Outbox.ClaimDueAsync(now, Hold, most, Stop);
            IReadOnlyList<QueueModel.Entry> expected = model.Claim(now, Hold, most);
            Equal(expected.Select(entry => (entry.Id, entry.Attempts)), claimed.Select(one => (one.Message.MessageId, one.Attempt)), where);
            inHand.AddRange(claimed.Zip(expected, (message, entry) => (message, entry, entry.Claim)));
            tally.Claimed += claimed.Count;
        }

        private async Task RecordAsync(Step.Record record, string where)
        {
            (ClaimedMessage message, QueueModel.Entry entry, int claim) = inHand[record.Which % inHand.Count];
            DateTimeOffset next = now.AddMinutes(record.Minutes);
            (bool expected, bool actual) = record.What switch
            {
                0 => (entry.Deliver(), await Outbox.RecordDeliveredAsync(message, "a.eml", now, Stop)),
                1 => (entry.Refuse(claim), await Outbox.RecordRefusedForGoodAsync(message, "550", now, Stop)),
                2 => (entry.Postpone(claim, "refused-for-now", next), await Outbox.RecordRefusedForNowAsync(message, "451", next, Stop)),
                3 => (entry.Postpone(claim, "unknown", next), await Outbox.RecordUnknownAsync(message, "line lost", next, Stop)),
                _ => (entry.Release(claim), await Outbox.ReleaseAsync(message, Stop)),
            };
            Assert.True(expected == actual, $"recording gave {actual}: {where}");
            tally.Recorded += actual ? 1 : 0;
            tally.TooLate += actual ? 0 : 1;
        }

        private async Task CompareAsync(string where)
        {
            OutboxCounts counts = await Outbox.CountAsync(Stop);
            Equal(
                new[] { "queued", "delivered", "refused" }.Select(state => model.Entries.Count(entry => entry.State == state)),
                [counts.Queued, counts.Delivered, counts.Refused],
                where);
            Equal(
                model.Entries.Where(entry => entry.State != "delivered")
                    .Select(entry => (entry.Id, entry.Attempts, entry.Outcome, entry.State == "queued" ? entry.NotBefore : (DateTimeOffset?)null)),
                (await Outbox.LoadUndeliveredAsync(Stop)).Select(one => (one.MessageId, one.Attempts, one.LastOutcome, one.NextAttempt)),
                where);
            Equal(
                model.Told.Select(pair => $"{pair.Key.Key} {pair.Key.Address} {pair.Value}").Order(StringComparer.Ordinal),
                (await new ToldStore(current).LoadAsync(Stop)).All.Select(told => $"{told.Key} {told.Address} {told.MessageId}").Order(StringComparer.Ordinal),
                where);
        }

        private static void Equal<T>(IEnumerable<T> expected, IEnumerable<T> actual, string where)
        {
            string wanted = string.Join("; ", expected);
            string got = string.Join("; ", actual);
            Assert.True(wanted == got, $"the model says {wanted}, the database {got}: {where}");
        }
    }
}

public sealed class SqliteQueueLawTests() : QueueLawTests(DatabaseKind.File);

public sealed class PostgresQueueLawTests() : QueueLawTests(DatabaseKind.Server);
