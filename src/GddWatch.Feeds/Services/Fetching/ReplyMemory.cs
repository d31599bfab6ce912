using System.Collections.Concurrent;

namespace GddWatch.Feeds.Services.Fetching;

/// <summary>The replies that services may be asked about again, up to a total size; more are asked for in full.</summary>
/// <param name="kept">Replies of an earlier run, where they were stored.</param>
public sealed class ReplyMemory(IEnumerable<KeptReply>? kept = null)
{
    private const long MostBytes = 64 * 1024 * 1024;

    private readonly ConcurrentDictionary<Uri, KeptReply> replies = new((kept ?? []).Select(each => KeyValuePair.Create(each.Address, each)));
    private readonly Lock gate = new();

    /// <summary>All that is kept.</summary>
    public IReadOnlyCollection<KeptReply> Kept => [.. replies.Values];

    internal KeptReply? Of(Uri address) => replies.GetValueOrDefault(address);

    internal void Forget(Uri address) => replies.TryRemove(address, out _);

    internal void Keep(KeptReply reply)
    {
        lock (gate)
        {
            replies.TryRemove(reply.Address, out _);
            if (replies.Values.Sum(each => (long)each.Body.Length) + reply.Body.Length > MostBytes) replies.Clear();
            if (reply.Body.Length <= MostBytes / 8) replies[reply.Address] = reply;
        }
    }
}
