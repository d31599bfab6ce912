using GddWatch.Agronomy.Changes;

namespace GddWatch.Tests.Storage;

/// <summary>The queue as plain lists in memory: what the database must tell at any time.</summary>
internal sealed class QueueModel
{
    private readonly List<Entry> entries = [];

    private readonly Dictionary<(NoticeKey Key, string Address), string> told = [];

    public IEnumerable<Entry> Entries => entries;

    public IReadOnlyDictionary<(NoticeKey Key, string Address), string> Told => told;

    /// <summary>Queues all messages, or none and returns false where one tells again what another told, or comes again with another notice.</summary>
    public bool TryQueue(IReadOnlyList<(Message Message, DateTimeOffset NotBefore)> messages)
    {
        List<Entry> added = [];
        Dictionary<(NoticeKey Key, string Address), string> marked = new(told);
        foreach ((Message message, DateTimeOffset notBefore) in messages)
        {
            bool isNew = entries.Concat(added).All(entry => entry.Id != message.MessageId);
            if (isNew)
                added.Add(new Entry { Id = message.MessageId, NotBefore = notBefore });
            foreach (Notice notice in message.Notices)
            {
                bool fresh = marked.TryAdd((notice.Key, message.Address), message.MessageId);
                if (fresh ? !isNew : marked[(notice.Key, message.Address)] != message.MessageId)
                    return false;
            }
        }

        entries.AddRange(added);
        foreach (((NoticeKey Key, string Address) pair, string id) in marked)
            told[pair] = id;
        return true;
    }

    public IReadOnlyList<Entry> Claim(DateTimeOffset now, TimeSpan hold, int most)
    {
        Entry[] due = [.. entries.Where(entry => entry.State == "queued" && entry.NotBefore <= now && !(entry.ClaimedUntil > now)).Take(most)];
        foreach (Entry entry in due)
        {
            entry.ClaimedUntil = now + hold;
            entry.Claim++;
            entry.Attempts++;
        }

        return due;
    }

    internal sealed class Entry
    {
        public required string Id { get; init; }

        public DateTimeOffset NotBefore { get; set; }

        public string State { get; private set; } = "queued";

        public DateTimeOffset? ClaimedUntil { get; set; }

        /// <summary>Counts the claims, and so names the one that holds.</summary>
        public int Claim { get; set; }

        public int Attempts { get; set; }

        public string? Outcome { get; private set; }

        public bool HeldBy(int claim) => State == "queued" && ClaimedUntil is not null && Claim == claim;

        public bool Deliver()
        {
            bool changes = State != "delivered";
            if (changes)
                Settle("delivered", "delivered");
            return changes;
        }

        public bool Refuse(int claim)
        {
            bool held = HeldBy(claim);
            if (held)
                Settle("refused", "refused-for-good");
            return held;
        }

        public bool Postpone(int claim, string outcome, DateTimeOffset next)
        {
            bool held = HeldBy(claim);
            if (held)
                (Outcome, NotBefore, ClaimedUntil) = (outcome, next, null);
            return held;
        }

        public bool Release(int claim)
        {
            bool held = HeldBy(claim);
            if (held)
                (Attempts, ClaimedUntil) = (Attempts - 1, null);
            return held;
        }

        private void Settle(string state, string outcome) => (State, Outcome, ClaimedUntil) = (state, outcome, null);
    }
}
