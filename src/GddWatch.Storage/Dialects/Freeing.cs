using System.Data.Common;

namespace GddWatch.Storage.Dialects;

/// <summary>Giving a lock of a session back.</summary>
internal static class Freeing
{
    /// <summary>A server that keeps silent is not waited for any longer: it frees the lock when it finds the connection gone.</summary>
    private static readonly TimeSpan Longest = TimeSpan.FromSeconds(1);

    /// <summary>
    /// Runs the statement that frees a lock; where the connection is broken the server has freed it. False where the server keeps silent: then the connection is still in use, and left to it.
    /// </summary>
    public static async Task<bool> FreeAsync(this DbConnection connection, string sql)
    {
        try
        {
            using var limit = new CancellationTokenSource(Longest);
            return await SilentServer.NotWaitForAsync(
                async told =>
                {
                    await new Work(connection, null, told).ExecuteAsync(sql);
                    return true;
                },
                limit.Token);
        }
        catch (OperationCanceledException)
        {
            return false;
        }
        catch (Exception fault) when (PostgresFaults.IsFault(fault) || fault is InvalidOperationException)
        {
            // The session has ended, and the lock with it.
            return true;
        }
    }
}
