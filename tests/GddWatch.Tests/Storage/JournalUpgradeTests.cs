using GddWatch.Agronomy.Journal;
using GddWatch.Storage;
using GddWatch.Storage.Dialects;
using Microsoft.Extensions.Time.Testing;
using Xunit;

namespace GddWatch.Tests.Storage;

/// <summary>A database from before the journal gets one and keeps what it has.</summary>
public sealed class JournalUpgradeTests : IDisposable
{
    private const string Windows = """
        insert into judged_site values ('north-common', '2026-04-12');
        insert into kept_window (site, treatment, season, state, since, reason, judged_on, configuration)
        values ('north-common', 'overseeding', 2026, 'open', '2026-04-10', 'The soil is warm.', '2026-04-12', 'c1');
        insert into region_value values ('configuration', 'c1');
        """;

    private readonly TemporaryFolder folder = new();

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    private string Path => folder.File("a.db");

    public void Dispose() => folder.Dispose();

    [Fact]
    public async Task A_database_from_before_the_journal_is_copied_gets_one_and_keeps_what_it_has()
    {
        SchemaChange[] before = [.. SchemaChange.OfSqlite().Where(change => string.CompareOrdinal(change.Name, "0002") < 0)];
        Assert.Equal("0001-windows-and-messages.sql", Assert.Single(before).Name);
        await using (Database old = await OpenAsync(before))
        {
            await old.WriteAsync(work => work.ExecuteAsync(Windows), Stop);
            await Assert.ThrowsAsync<StorageException>(() => new JournalStore(old).LoadHistoryAsync(Stop));
        }

        await using (Database now = await OpenAsync(SchemaChange.OfSqlite()))
        {
            Assert.Empty(await new JournalStore(now).LoadHistoryAsync(Stop));
            await new JournalStore(now).RecordAsync([new Mowing { SiteId = "north-common", On = new DateOnly(2026, 4, 12) }], null, Kept.Morning, Stop);
            Assert.Equal("The soil is warm.", Assert.Single(await new WindowStore(now).LoadAsync(Stop)).Reason);
            Assert.Equal("c1", await new RegionValues(now).FindAsync("configuration", Stop));
        }

        string backup = Assert.Single(Directory.GetFiles(folder.Path, "*.backup"));
        await using Database copy = await Database.OpenAsync(backup, new FakeTimeProvider(Kept.Morning), before, TimeSpan.FromSeconds(5), Stop);
        Assert.Single(await new WindowStore(copy).LoadAsync(Stop));
    }

    [Fact]
    public async Task A_journal_from_before_corrections_of_what_was_told_is_kept()
    {
        SchemaChange[] before = [.. SchemaChange.OfSqlite().Where(change => string.CompareOrdinal(change.Name, "0003") < 0)];
        Assert.Equal(2, before.Length);
        await using (Database old = await OpenAsync(before))
        {
            await new JournalStore(old).RecordAsync([new Mowing { SiteId = "a", On = Kept.Day }, new Mowing { SiteId = "a", On = Kept.Day, Note = "half" }], null, Kept.Morning, Stop);
        }

        await using Database now = await OpenAsync(SchemaChange.OfSqlite());
        Assert.Equal([2L, null], (await new JournalStore(now).LoadHistoryAsync(Stop)).Select(kept => kept.ReplacedBy));
    }

    private Task<Database> OpenAsync(IReadOnlyList<SchemaChange> changes) => Database.OpenAsync(Path, new FakeTimeProvider(Kept.Morning), changes, TimeSpan.FromSeconds(5), Stop);
}
