namespace GddWatch.Storage.Dialects;

/// <summary>Work on a server that may keep silent.</summary>
internal static class SilentServer
{
    /// <summary>How long the driver may take to end work that is given up.</summary>
    private static readonly TimeSpan Grace = TimeSpan.FromSeconds(1.5);

    /// <summary>
    /// Does work on a server. Once it is to stop, it is told so, and left behind where it does not end: to give a statement up the driver asks the server, and waits for its answer, in the
    /// thread that says "stop", so that a silent server would hold up whoever stops the program.
    /// </summary>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public static async Task<T> NotWaitForAsync<T>(Func<CancellationToken, Task<T>> work, CancellationToken stop)
    {
        // Not disposed: work that was left behind may still look at it.
        var told = new CancellationTokenSource();
        var left = new CancellationTokenSource();
        await using CancellationTokenRegistration stopping = stop.Register(() =>
        {
            left.CancelAfter(Grace);
            _ = Task.Run(told.Cancel, CancellationToken.None);
        });
        try
        {
            return await work(told.Token).WaitAsync(left.Token);
        }
        catch (OperationCanceledException) when (stop.IsCancellationRequested)
        {
            throw new OperationCanceledException(stop);
        }
    }
}
