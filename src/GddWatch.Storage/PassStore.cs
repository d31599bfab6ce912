using GddWatch.Agronomy.Changes;
using GddWatch.Storage.Sql;

namespace GddWatch.Storage;

/// <summary>Keeps what a pass leaves behind.</summary>
public sealed class PassStore(Database database)
{
    /// <summary>
    /// Keeps the windows, queues the messages, marks their notices as told and the sites as judged, in one transaction. A message that is already kept, whatever
    /// became of it, is left as it is: the same pass may be committed again after a crash.
    /// </summary>
    /// <returns>How many messages were new.</returns>
    /// <exception cref="ArgumentException">A window belongs to a site that was not judged.</exception>
    /// <exception cref="StorageException">A notice was already told to that person by another message, or the database failed; nothing of the pass is kept.</exception>
    public Task<int> CommitAsync(PassResult pass, CancellationToken stop)
    {
        KeptWindow? stray = pass.Windows.FirstOrDefault(window => !pass.Sites.Contains(window.Site));
        if (stray is not null)
            throw new ArgumentException($"The window {stray.Site}/{stray.Treatment}/{stray.Season} is of a site that is not among those judged.", nameof(pass));

        return database.WriteAsync(
            async work =>
            {
                await WindowStore.KeepAsync(work, pass.Windows);
                await WindowStore.KeepJudgedAsync(work, pass.Sites, pass.Day);
                foreach (string messageId in pass.Withdrawn)
                    await work.ExecuteAsync(MessageSql.Withdraw, new { messageId, words = "Withdrawn: what it said was out of date, or nobody is told at that address any more.", at = StoredText.Of(pass.At) });
                foreach (string address in pass.Forgiven)
                    await work.ExecuteAsync(RefusingAddressSql.Remove, new { address });
                int added = 0;
                foreach (QueuedMessage queued in pass.Messages)
                {
                    bool isNew = await QueueAsync(work, queued, pass.At);
                    await MarkToldAsync(work, queued.Message, pass.Configuration, isNew);
                    added += isNew ? 1 : 0;
                }

                foreach ((string name, string value) in pass.RegionValues)
                    await RegionValues.KeepAsync(work, name, value);
                return added;
            },
            stop);
    }

    private static async Task<bool> QueueAsync(Work work, QueuedMessage queued, DateTimeOffset at) => await work.ExecuteAsync(
        MessageSql.Queue,
        new
        {
            messageId = queued.Message.MessageId,
            address = queued.Message.Address,
            day = StoredText.Of(queued.Message.Day),
            body = MessageText.Write(queued.Message),
            queuedAt = StoredText.Of(at),
            notBefore = StoredText.Of(queued.NotBefore ?? at),
        }) > 0;

    private static async Task MarkToldAsync(Work work, Message message, string configuration, bool isNew)
    {
        foreach ((Notice notice, ToldFact fact) in message.Notices.SelectMany(each => each.Facts.Select(fact => (each, fact))))
        {
            NoticeKey key = fact.Key;
            ToldRow told = ToldRow.Of(fact, notice, message, configuration);
            if (await work.ExecuteAsync(ToldSql.Keep, told) > 0)
            {
                if (!isNew)
                    throw new StorageException($"The message {message.MessageId} is already kept without the notice {key}. Nothing of this pass was kept.");
                continue;
            }

            string by = await work.SingleAsync<string>(ToldSql.ByWhichMessage, told);
            if (by != message.MessageId)
            {
                throw new StorageException(
                    $"The notice {key} was already told to {message.Address} by the message {by} and is not told again by {message.MessageId}. "
                    + "Nothing of this pass was kept.");
            }
        }
    }
}
