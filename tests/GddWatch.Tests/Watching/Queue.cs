using GddWatch.Agronomy.Changes;
using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Quantities;
using GddWatch.Notices.Channels;
using GddWatch.Storage;
using GddWatch.Tests.Loopback;
using GddWatch.Tests.Notices.Composing;
using GddWatch.Tests.Storage;
using GddWatch.Watching;
using Xunit;

namespace GddWatch.Tests.Watching;

/// <summary>A queue in a real database, and delivery passes over it at a time that the test sets.</summary>
internal sealed class Queue : IAsyncDisposable
{
    private readonly TemporaryFolder folder;
    private readonly Database database;
    private int queued;

    private Queue(Database database, TemporaryFolder folder)
    {
        this.database = database;
        this.folder = folder;
        Outbox = new Outbox(database);
    }

    public WatchedTime Time { get; } = new();

    public Outbox Outbox { get; }

    public Recipient[] Recipients { get; set; } = [];

    private static CancellationToken Stop => TestContext.Current.CancellationToken;

    public static async Task<Queue> WithMailsToAsync(params string[] addresses)
    {
        var home = new TemporaryFolder();
        var queue = new Queue(await Kept.OpenAsync(home.File("queue.db"), Stop), home);
        queue.Time.SetUtcNow(Kept.Morning);
        await queue.AddAsync(addresses);
        return queue;
    }

    /// <summary>The Message-ID of a queued mail, by its number from 1.</summary>
    public static string Id(int number) => $"{number}@example.org";

    public async Task AddAsync(params string[] addresses)
    {
        QueuedMessage[] messages = [.. addresses.Select(address => new QueuedMessage(Kept.Message(Id(++queued), address, Kept.Key(season: 2000 + queued))))];
        await new PassStore(database).CommitAsync(Kept.Pass() with { Messages = messages, At = Time.GetUtcNow() }, Stop);
    }

    public Task<DeliveryReport> DeliverAsync(SmtpOptions options) => DeliverAsync(new SmtpChannel(options, Time));

    /// <summary>A pass; made time runs on while somebody waits for it.</summary>
    public async Task<DeliveryReport> DeliverAsync(IDeliveryChannel channel)
    {
        var region = new Region { Name = "Alder Reach", TimeZone = "America/Chicago", Units = ReadersUnits.UnitedStates, Sites = [], Recipients = Recipients, OperatorAddress = "operator@example.org" };
        var pass = new DeliveryPass(Outbox, Composers.Make(), channel, new DeliveryRules(region, TimeSpan.FromDays(3)), TimeZoneInfo.Utc, () => 0);
        await using (channel)
        {
            Task<DeliveryReport> running = Task.Run(() => pass.RunAsync(Time.GetUtcNow, Stop), Stop);
            while (!running.IsCompleted)
            {
                Time.Advance(TimeSpan.FromMilliseconds(100));
                await Task.WhenAny(running, Task.Delay(1, Stop));
            }

            return await running;
        }
    }

    /// <summary>The mails that were not delivered, by their numbers, with what became of them.</summary>
    public async Task<IReadOnlyDictionary<string, UndeliveredMessage>> UndeliveredAsync() =>
        (await Outbox.LoadUndeliveredAsync(Stop)).ToDictionary(each => each.MessageId, StringComparer.Ordinal);

    public Task<IReadOnlyList<RefusingAddress>> RefusingAsync() => new RefusingAddresses(database).LoadAsync(Stop);

    public async ValueTask DisposeAsync()
    {
        await database.DisposeAsync();
        folder.Dispose();
    }
}
