using System.Data.Common;
using GddWatch.Storage;
using GddWatch.Storage.Dialects;
using Microsoft.Extensions.Time.Testing;
using Xunit;

namespace GddWatch.Tests.Storage;

public sealed class PostgresDatabaseTests
{
    private static readonly TimeSpan Hold = TimeSpan.FromMinutes(5);

    private static readonly SchemaChange Later = new("9001-later.sql", "alter table region_value add column note text; create table later (x integer);");

    private static readonly SchemaChange Broken = new("9002-broken.sql", "create table half_done (x integer); insert into no_such_table values (1);");

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Two_that_start_together_on_nothing_both_find_a_whole_database()
    {
        DatabasePlace.OnServer place = await (await PostgresCluster.SharedAsync()).NewEmptyAsync();

        Database[] both = await Task.WhenAll(Enumerable.Range(0, 2).Select(_ => Task.Run(() => OpenAsync(place), Stop)));

        foreach (Database one in both)
        {
            await new RegionValues(one).KeepAsync("configuration", "c", Stop);
            await one.DisposeAsync();
        }
    }

    [Fact]
    public async Task A_newer_database_and_another_programs_are_refused_with_what_to_do()
    {
        PostgresCluster cluster = await PostgresCluster.SharedAsync();
        DatabasePlace.OnServer newer = await cluster.NewEmptyAsync();
        await (await OpenAsync(newer, Later)).DisposeAsync();
        DatabasePlace.OnServer foreign = await cluster.NewEmptyAsync();
        await (await OpenAsync(foreign)).DisposeAsync();

        Assert.Equal(
            $"The database '{newer}' was written by a newer version of this program (it has the change 9001-later.sql, unknown here). "
            + "Run that version or a later one, or put back the backup that was made before the change.",
            (await Assert.ThrowsAsync<StorageException>(() => OpenAsync(newer))).Message);
        await using (Database open = await OpenAsync(foreign)) await open.WriteAsync(work => work.ExecuteAsync("drop table schema_version"), Stop);
        StorageException refused = await Assert.ThrowsAsync<StorageException>(() => OpenAsync(foreign));
        Assert.StartsWith($"The database '{foreign}' belongs to another program (it holds the tables daily_value, ", refused.Message, StringComparison.Ordinal);
        Assert.EndsWith("Name another database.", refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_change_that_fails_leaves_the_database_as_it_was_for_the_version_before()
    {
        DatabasePlace.OnServer place = await (await PostgresCluster.SharedAsync()).NewAsync();
        await using (Database old = await OpenAsync(place)) await new RegionValues(old).KeepAsync("configuration", "c1", Stop);

        StorageException fault = await Assert.ThrowsAsync<StorageException>(() => OpenAsync(place, Later, Broken));

        Assert.Contains("the change 9002-broken.sql failed", fault.Message, StringComparison.Ordinal);
        await using Database again = await OpenAsync(place);
        Assert.Equal("c1", await new RegionValues(again).FindAsync("configuration", Stop));
        Assert.Equal(0, await again.ReadAsync(work => work.SingleAsync<int>("select count(*) from pg_tables where tablename in ('later', 'half_done')"), Stop));
    }

    [Fact]
    public async Task A_database_that_is_not_there_is_told_by_its_name_with_what_to_do()
    {
        PostgresCluster cluster = await PostgresCluster.SharedAsync();
        DatabasePlace.OnServer nowhere = DatabasePlace.OnServer.Read(cluster.Connection("nowhere"), "hush-hush", out _)!;

        StorageException fault = await Assert.ThrowsAsync<StorageException>(() => OpenAsync(nowhere));

        Assert.Equal($"There is no database '{nowhere}'. Create it on the server (createdb), empty, and start again; its tables are made by this program.", fault.Message);
        Assert.False(fault.MayPass);
    }

    [Fact]
    public async Task A_message_that_another_has_its_hand_on_is_passed_over_without_waiting()
    {
        await using var place = new TestDatabase(DatabaseKind.Server);
        await using Database database = await place.OpenAsync(Stop);
        await new PassStore(database).CommitAsync(Kept.Pass([.. Enumerable.Range(0, 3).Select(i => Kept.Message($"<{i}@x>", $"r{i}@example.org", Kept.Key()))]), Stop);
        await using DbConnection other = await place.ConnectAsync(Stop);
        await using DbTransaction claiming = await other.BeginTransactionAsync(Stop);
        await using DbCommand hand = other.CreateCommand();
        hand.CommandText = "update message set claim_owner = 'other', claimed_until = '9999' where message_id = '<0@x>'";
        await hand.ExecuteNonQueryAsync(Stop);

        // It would wait for 30 seconds and then fail, were the row waited for.
        IReadOnlyList<ClaimedMessage> claimed = await new Outbox(database).ClaimDueAsync(Kept.Morning, Hold, 10, Stop);

        Assert.Equal(["<1@x>", "<2@x>"], claimed.Select(each => each.Message.MessageId));
        // The other dies in the middle of its claim, and the message is there for everyone at once.
        await claiming.RollbackAsync(Stop);
        Assert.Equal("<0@x>", Assert.Single(await new Outbox(database).ClaimDueAsync(Kept.Morning, Hold, 10, Stop)).Message.MessageId);
    }

    [Fact]
    public async Task The_queue_goes_on_while_a_pass_is_being_kept()
    {
        await using var place = new TestDatabase(DatabaseKind.Server);
        await using Database database = await place.OpenAsync(Stop);
        await new PassStore(database).CommitAsync(Kept.Pass(Kept.Message("<1@x>", "a@example.org", Kept.Key())), Stop);

        await database.WriteAsync(
            async work =>
            {
                await RegionValues.KeepAsync(work, "configuration", "half-way");
                ClaimedMessage claimed = Assert.Single(await new Outbox(database).ClaimDueAsync(Kept.Morning, Hold, 10, Stop));
                Assert.True(await new Outbox(database).RecordDeliveredAsync(claimed, "250", Kept.Morning, Stop));
                return true;
            },
            Stop);

        Assert.Equal(1, (await new Outbox(database).CountAsync(Stop)).Delivered);
    }

    [Fact]
    public async Task One_of_several_services_has_the_seat_of_the_judge_until_it_ends()
    {
        await using var place = new TestDatabase(DatabaseKind.Server);
        await using Database one = await place.OpenAsync(Stop);
        await using Database two = await place.OpenAsync(Stop);
        await using var waiting = new JudgingSeat(two);
        await using (var judge = new JudgingSeat(one))
        {
            Assert.True(await judge.TakeAsync(Stop));
            Assert.True(await judge.TakeAsync(Stop));
            Assert.False(await waiting.TakeAsync(Stop));
        }

        Assert.True(await waiting.TakeAsync(Stop));
    }

    [Fact]
    public async Task In_a_file_the_seat_is_always_ones_own()
    {
        await using var place = new TestDatabase(DatabaseKind.File);
        await using Database database = await place.OpenAsync(Stop);
        await using var seat = new JudgingSeat(database);

        Assert.True(await seat.TakeAsync(Stop));
    }

    private static Task<Database> OpenAsync(DatabasePlace.OnServer place, params SchemaChange[] more) => Database.OpenAsync(
        place, new FakeTimeProvider(Kept.Morning), [.. SchemaChange.OfPostgreSql(), .. more], new Patience(1, TimeSpan.Zero, TimeSpan.Zero), _ => { }, Stop);
}
