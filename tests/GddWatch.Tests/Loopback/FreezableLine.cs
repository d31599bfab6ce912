using System.Net;
using System.Net.Sockets;

namespace GddWatch.Tests.Loopback;

/// <summary>A line of this machine between a program and a server that can fall silent: nothing is handed on any more, and nothing is closed either.</summary>
internal sealed class FreezableLine : IAsyncDisposable
{
    private readonly TcpListener listener = new(IPAddress.Loopback, 0);
    private readonly CancellationTokenSource stop = new();
    private readonly List<TcpClient> ends = [];
    private readonly int to;
    private readonly Task accepting;
    private volatile bool isFrozen;

    /// <summary>Opens a line to a port.</summary>
    public FreezableLine(int to)
    {
        this.to = to;
        listener.Start();
        accepting = AcceptAsync();
    }

    public int Port => ((IPEndPoint)listener.LocalEndpoint).Port;

    public void Freeze() => isFrozen = true;

    public async ValueTask DisposeAsync()
    {
        await stop.CancelAsync();
        listener.Dispose();
        await accepting;
        foreach (TcpClient end in ends) end.Dispose();
        stop.Dispose();
    }

    private async Task AcceptAsync()
    {
        var handing = new List<Task>();
        try
        {
            while (true)
            {
                TcpClient near = await listener.AcceptTcpClientAsync(stop.Token);
                var far = new TcpClient();
                ends.AddRange([near, far]);
                await far.ConnectAsync(IPAddress.Loopback, to, stop.Token);
                handing.Add(HandOnAsync(near, far));
                handing.Add(HandOnAsync(far, near));
            }
        }
        catch (Exception end) when (end is OperationCanceledException or SocketException or ObjectDisposedException)
        {
            await Task.WhenAll(handing);
        }
    }

    private async Task HandOnAsync(TcpClient from, TcpClient other)
    {
        byte[] buffer = new byte[1 << 16];
        try
        {
            while (true)
            {
                int count = await from.GetStream().ReadAsync(buffer, stop.Token);
                if (count == 0) break;
                if (!isFrozen) await other.GetStream().WriteAsync(buffer.AsMemory(0, count), stop.Token);
            }

            other.Client.Shutdown(SocketShutdown.Send);
        }
        catch (Exception end) when (end is OperationCanceledException or IOException or SocketException or ObjectDisposedException)
        {
            // One of the two has hung up.
        }
    }
}
