using System.Data.Common;
using GddWatch.Storage.Dialects;
using GddWatch.Storage.Sql;

namespace GddWatch.Storage;

/// <summary>
/// The seat of the one service that judges, where several work on one server; the others deliver. It is held by a session of the server, so that it is free again
/// when its holder ends, however it ends. In a file there is one service, which has the seat.
/// </summary>
public sealed class JudgingSeat(Database database) : IAsyncDisposable
{
    private DbConnection? session;

    /// <summary>Takes the seat where it is free; true where it is ours, also where it was before.</summary>
    /// <exception cref="StorageException">The database failed.</exception>
    public async Task<bool> TakeAsync(CancellationToken stop)
    {
        if (!database.LocksRows) return true;
        if (session is not null && await StillHoldsAsync(session, stop)) return true;
        await LeaveAsync();
        session = await database.HoldAsync(PostgresSql.TakeJudging, stop);
        return session is not null;
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync() => await LeaveAsync();

    private static async Task<bool> StillHoldsAsync(DbConnection session, CancellationToken stop)
    {
        try
        {
            return await SilentServer.NotWaitForAsync(told => new Work(session, null, told).SingleAsync<bool>(PostgresSql.HoldsJudging), stop);
        }
        catch (Exception fault) when (PostgresFaults.IsFault(fault) || fault is InvalidOperationException)
        {
            // The session ended with the server, or on the way to it, and with it the seat.
            return false;
        }
    }

    private async Task LeaveAsync()
    {
        if (session is not { } held) return;
        session = null;
        if (await held.FreeAsync(PostgresSql.FreeJudging)) await held.DisposeAsync();
    }
}
