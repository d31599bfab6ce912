using System.Data.Common;

namespace GddWatch.Storage.Dialects;

/// <summary>Giving a lock of a session back.</summary>
internal static class Freeing
{
    /// <summary>Runs the statement that frees a lock; where the connection is broken the server has freed it.</summary>
    public static async Task FreeAsync(this DbConnection connection, string sql)
    {
        try
        {
            await new Work(connection, null, CancellationToken.None).ExecuteAsync(sql);
        }
        catch (Exception fault) when (PostgresFaults.IsFault(fault) || fault is InvalidOperationException)
        {
            // The session has ended, and the lock with it.
        }
    }
}
