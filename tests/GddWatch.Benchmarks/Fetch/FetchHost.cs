using System.Globalization;
using System.Net;
using System.Net.Sockets;
using System.Text;

namespace GddWatch.Benchmarks.Fetch;

/// <summary>A web server on this machine alone that takes its time for each answer.</summary>
internal sealed class FetchHost : IAsyncDisposable
{
    /// <summary>How long each answer takes.</summary>
    public static readonly TimeSpan Delay = TimeSpan.FromMilliseconds(50);

    private readonly TcpListener listener = new(IPAddress.Loopback, 0);
    private readonly CancellationTokenSource stop = new();
    private readonly Func<Uri, byte[]> answer;
    private readonly TimeProvider clock;
    private readonly Task running;
    private int requests;

    public FetchHost(Func<Uri, byte[]> answer, TimeProvider clock)
    {
        this.answer = answer;
        this.clock = clock;
        listener.Start();
        Address = new Uri($"http://127.0.0.1:{((IPEndPoint)listener.LocalEndpoint).Port.ToString(CultureInfo.InvariantCulture)}/");
        running = RunAsync();
    }

    public Uri Address { get; }

    /// <summary>How many requests were answered.</summary>
    public int Requests => requests;

    public async ValueTask DisposeAsync()
    {
        await stop.CancelAsync();
        await running;
        listener.Dispose();
        stop.Dispose();
    }

    private async Task RunAsync()
    {
        List<Task> talks = [];
        try
        {
            while (true) talks.Add(TalkAsync(await listener.AcceptSocketAsync(stop.Token)));
        }
        catch (OperationCanceledException)
        {
            // All has been fetched.
        }

        await Task.WhenAll(talks);
    }

    private async Task TalkAsync(Socket socket)
    {
        // Else the body would wait until the head has been acknowledged.
        socket.NoDelay = true;
        try
        {
            await using NetworkStream stream = new(socket, ownsSocket: true);
            using StreamReader reader = new(stream, Encoding.ASCII, leaveOpen: true);
            while (await reader.ReadLineAsync(stop.Token) is { Length: > 0 } first)
            {
                while (await reader.ReadLineAsync(stop.Token) is { Length: > 0 })
                {
                    // The headers are of no interest here.
                }

                await Task.Delay(Delay, clock, stop.Token);
                byte[] body = answer(new Uri(Address, first.Split(' ')[1]));
                string head = string.Create(CultureInfo.InvariantCulture, $"HTTP/1.1 200 OK\r\nContent-Type: application/json\r\nContent-Length: {body.Length}\r\n\r\n");
                await stream.WriteAsync(Encoding.ASCII.GetBytes(head), stop.Token);
                await stream.WriteAsync(body, stop.Token);
                Interlocked.Increment(ref requests);
            }
        }
        catch (Exception e) when (e is OperationCanceledException or IOException)
        {
            // The other side has gone, or all has been fetched.
        }
    }
}
