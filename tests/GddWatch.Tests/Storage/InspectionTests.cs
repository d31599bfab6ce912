using GddWatch.Agronomy.Journal;
using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Weather;
using GddWatch.Storage;
using GddWatch.Storage.Upkeep;
using Xunit;

namespace GddWatch.Tests.Storage;

public abstract class InspectionTests(DatabaseKind kind) : IAsyncDisposable
{
    private readonly TestDatabase place = new(kind);

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public async ValueTask DisposeAsync()
    {
        await place.DisposeAsync();
        GC.SuppressFinalize(this);
    }

    [Fact]
    public async Task What_the_stores_keep_is_found_well_and_all_of_it_is_looked_at()
    {
        await using Database database = await place.OpenAsync(Stop);
        await FillAsync(database);

        InspectionReport report = await new Inspection(database).RunAsync(Kept.Morning, Stop);

        // The throw-away server of the tests does not wait for the disk, and that is found.
        Assert.Equal(kind == DatabaseKind.File ? 0 : 1, report.Findings.Count);
        Assert.All(report.Findings, finding => Assert.StartsWith("The server is set to say that something is kept before it is on the disk", finding, StringComparison.Ordinal));
        Assert.Equal((1, 2, 3, 4, 8L, 12L), (report.Windows, report.Notices, report.Messages, report.Entries, report.Values, report.Forecasts));
    }

    // Each is a thing that no store does; the words are a part of the sentence that tells it.
    [Theory]
    [InlineData("delete from kept_window", "The notice north-common/overseeding/2026/opened was told to a@example.org on 2026-04-12, and no such window is kept.")]
    [InlineData("update kept_window set since = 'Sunday'", "The window north-common/overseeding/2026 cannot be read: 'Sunday' where a date such as 2026-04-12 belongs.")]
    [InlineData("update kept_window set opened = '2026-04-20'", "opened, went past its best or closed after 2026-04-12")]
    [InlineData("update kept_window set opened = '2026-04-10', closed_on = '2026-04-02'", "closed on 2026-04-02, before it opened on 2026-04-10.")]
    [InlineData("update kept_window set weather_through = '2026-05-01'", "with weather of later days, up to 2026-05-01.")]
    [InlineData("update judged_site set judged_on = '2026-04-01'", "was judged as of 2026-04-12, but its site only as of 2026-04-01.")]
    [InlineData("delete from judged_site", "was judged as of 2026-04-12, but its site never.")]
    [InlineData("update told set kind = 'rumour'", "'rumour' where a kind of notice belongs")]
    [InlineData("update told set revision = revision + 1 where address = 'a@example.org'", "The message <1@x> tells a@example.org the notice north-common/overseeding/2026/opened, which is not marked as told by it.")]
    [InlineData("update told set message_id = '<1@x>'", "The notice north-common/overseeding/2026/opened is marked as told to b@example.org by the message <1@x>, which does not tell it.")]
    [InlineData("insert into told select site, treatment, season, kind, 1, address, '2026-04-01', fact, configuration, message_id from told", "on 2026-04-01, before the one that it comes after.")]
    [InlineData("update message set address = 'a@example.org, b@example.org' where message_id = '<1@x>'", "The message <1@x> is not for one recipient: \"a@example.org, b@example.org\".")]
    [InlineData("update message set address = 'c@example.org' where message_id = '<1@x>'", "The message <1@x> is for c@example.org, and for a@example.org in its text.")]
    [InlineData("update message set day = '2026-04-13'", "is of 2026-04-13, and of 2026-04-12 in its text.")]
    [InlineData("update message set body = '{' where message_id = '<1@x>'", "The message <1@x> cannot be read: ")]
    [InlineData("update message set state = 'delivered' where message_id = '<3@x>'", "The message <3@x> is delivered, and has no instant at which it was settled.")]
    [InlineData("update message set claim_owner = 'x', claimed_until = '2099-01-01T00:00:00.0000000Z' where state = 'queued'", "until 2099-01-01T00:00:00.0000000Z, which is longer than any worker holds one.")]
    [InlineData("update message set attempts = -1", "was tried -1 times.")]
    [InlineData("update journal_entry set replaced_by = 1 where number = 2", "The entry 1 of the journal was mended by number 2, and following that leads to no entry that ends it.")]
    [InlineData("update journal_entry set replaced_by = null", "The entries 1 and 2 of the journal are about the same thing on the same day, and all of them stand.")]
    [InlineData("update journal_entry set at_time = 'noon' where kind = 'reading'", "The entry 4 of the journal cannot be read: 'noon' where a time of day")]
    [InlineData("update daily_value set replaced_at = null", "seen at 2026-04-12T11:00:00.0000000Z, is said to stand, and another one was seen after it.")]
    [InlineData("update daily_value set replaced_at = '2026-04-14T11:00:00.0000000Z' where replaced_at is null", "is said to have stood until 2026-04-14T11:00:00.0000000Z, and no other was seen then.")]
    [InlineData("update daily_value set value = 1e300 where replaced_at is null", "which no day can have.")]
    [InlineData("update daily_value set day = '2026-07-01' where day = '2026-04-01'", "MinimumAirC of 2026-07-01 at lawn from a service was seen at 2026-04-12T11:00:00.0000000Z, before that day began anywhere.")]
    [InlineData("update daily_value set variable = 'Moonlight' where variable = 'MinimumAirC'", "The weather cannot be read: 'Moonlight' where a weather variable belongs.")]
    [InlineData("update forecast_value set day = '2026-04-01' where day = '2026-04-12'", "The forecast of a service for lawn that was issued on 2026-04-12 speaks of 2026-04-01, a day that was over.")]
    [InlineData("update forecast_value set issued_on = '2026-04-09'", "that was issued at 2026-04-12T11:00:00.0000000Z is said to be of 2026-04-09.")]
    [InlineData("update feed_position set latitude = 141", "is 141, -93.3: not on earth.")]
    public async Task What_cannot_be_is_told_in_a_sentence(string spoil, string words)
    {
        await using Database database = await place.OpenAsync(Stop);
        await FillAsync(database);
        Assert.True(await place.RunAsync(spoil, Stop) > 0);

        InspectionReport report = await new Inspection(database).RunAsync(Kept.Morning, Stop);

        Assert.Contains(report.Findings, finding => finding.Contains(words, StringComparison.Ordinal) && finding.EndsWith('.'));
    }

    /// <summary>Something of everything.</summary>
    private static async Task FillAsync(Database database)
    {
        await new PassStore(database).CommitAsync(
            Kept.Pass(Kept.Message("<1@x>", "a@example.org", Kept.Key()), Kept.Message("<2@x>", "B@example.org", Kept.Key()), Kept.Message("<3@x>", "operator@example.org")), Stop);
        var outbox = new Outbox(database);
        IReadOnlyList<ClaimedMessage> claimed = await outbox.ClaimDueAsync(Kept.Morning, TimeSpan.FromMinutes(30), 2, Stop);
        await outbox.RecordDeliveredAsync(claimed[1], "250 accepted", Kept.Morning, Stop);
        var mowing = new Mowing { SiteId = "north-common", On = Kept.Day };
        var journal = new JournalStore(database);
        await journal.RecordAsync(
            [
                mowing, mowing with { Note = "twice" }, new Sighting { SiteId = "north-common", On = Kept.Day, What = "first-beetle" },
                new SoilReading { SiteId = "north-common", On = Kept.Day, At = new TimeOnly(8, 0), Depth = Depth.FromCentimetres(5), Value = Temperature.FromCelsius(10) },
            ],
            null,
            Kept.Morning,
            Stop);
        await journal.WithdrawAsync(3, "another lawn", Kept.Morning, Stop);
        var weather = new WeatherStore(database);
        DateOnly first = new(2026, 4, 1);
        await weather.KeepAsync([Fetched(Days(first, 2, 0)) with { Forecast = new Forecast(Kept.Day, Kept.Morning, Days(Kept.Day, 6, 0)), Position = (41.6, -93.3, 250) }], Kept.Morning, Stop);
        await weather.KeepAsync([Fetched(Days(first, 2, 1))], Kept.Morning.AddDays(1), Stop);
    }

    private static FetchedWeather Fetched(DailySeries observed) => new("lawn", "a service", observed, null, null);

    private static DailySeries Days(DateOnly first, int count, double warmer)
    {
        var builder = new DailySeriesBuilder();
        for (int i = 0; i < count; i++)
        {
            builder.Put(first.AddDays(i), WeatherVariable.MinimumAirC, 4 + warmer);
            builder.Put(first.AddDays(i), WeatherVariable.MaximumAirC, 15 + warmer);
        }

        return builder.Build()!;
    }
}

public sealed class SqliteInspectionTests() : InspectionTests(DatabaseKind.File);

public sealed class PostgresInspectionTests() : InspectionTests(DatabaseKind.Server);
