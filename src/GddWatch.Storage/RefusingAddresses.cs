using GddWatch.Storage.Sql;

namespace GddWatch.Storage;

/// <summary>The addresses that refuse mails. They are counted where the refusals are recorded, in the <see cref="Outbox"/>.</summary>
public sealed class RefusingAddresses(Database database)
{
    /// <summary>All of them, by address.</summary>
    public Task<IReadOnlyList<RefusingAddress>> LoadAsync(CancellationToken stop) => database.ReadAsync(
        async work => (IReadOnlyList<RefusingAddress>)[.. (await work.QueryAsync<Row>(RefusingAddressSql.Load)).Select(row => row.Read())],
        stop);

    /// <summary>Asks for an address to be tried again from the next daily pass on; false where it is not paused.</summary>
    public Task<bool> ResumeAsync(string address, DateTimeOffset at, CancellationToken stop) => database.WriteAsync(
        async work => await work.ExecuteAsync(RefusingAddressSql.Resume, new { address = StoredText.Address(address), at = StoredText.Of(at) }) > 0,
        stop);

    private sealed class Row
    {
        public string Address { get; init; } = "";

        public int Refusals { get; init; }

        public string LastWords { get; init; } = "";

        public string LastAt { get; init; } = "";

        public string? PausedAt { get; init; }

        public string? ResumedAt { get; init; }

        public RefusingAddress Read() => new(Address, Refusals, LastWords, StoredText.Instant(LastAt), InstantOrNone(PausedAt), InstantOrNone(ResumedAt));

        private static DateTimeOffset? InstantOrNone(string? text) => text is null ? null : StoredText.Instant(text);
    }
}
