using System.Net;
using System.Net.Sockets;

namespace GddWatch.Benchmarks.Mail;

/// <summary>A mail server on this machine that takes every mail and keeps nothing but the count: what is measured is the program and not the server.</summary>
internal sealed class CountingMailServer : IAsyncDisposable
{
    private readonly TcpListener listener = new(IPAddress.Loopback, 0);
    private readonly CancellationTokenSource stop = new();
    private readonly Task running;
    private int accepted;
    private int connections;

    public CountingMailServer()
    {
        listener.Start();
        running = AcceptAsync();
    }

    public int Port => ((IPEndPoint)listener.LocalEndpoint).Port;

    public int Accepted => accepted;

    public int Connections => connections;

    public long Bytes { get; private set; }

    public async ValueTask DisposeAsync()
    {
        await stop.CancelAsync();
        listener.Stop();
        await running;
        stop.Dispose();
    }

    private async Task AcceptAsync()
    {
        try
        {
            while (true)
            {
                using Socket socket = await listener.AcceptSocketAsync(stop.Token);
                socket.NoDelay = true;
                connections++;
                await using var stream = new NetworkStream(socket);
                using var reader = new StreamReader(stream);
                await TalkAsync(reader, stream);
            }
        }
        catch (Exception e) when (e is OperationCanceledException or IOException or SocketException or ObjectDisposedException)
        {
            // The measurement is over.
        }
    }

    private async Task TalkAsync(StreamReader reader, NetworkStream stream)
    {
        await stream.WriteAsync("220 localhost ready\r\n"u8.ToArray(), stop.Token);
        while (await reader.ReadLineAsync(stop.Token) is { } line)
        {
            if (line == "DATA")
            {
                await stream.WriteAsync("354 go on\r\n"u8.ToArray(), stop.Token);
                while (await reader.ReadLineAsync(stop.Token) is { } text && text != ".") Bytes += text.Length + 2;
                accepted++;
            }

            await stream.WriteAsync(line == "QUIT" ? "221 goodbye\r\n"u8.ToArray() : "250 ok\r\n"u8.ToArray(), stop.Token);
            if (line == "QUIT") return;
        }
    }
}
