using System.Collections.Concurrent;
using System.Net;
using System.Net.Sockets;
using System.Text;

namespace GddWatch.Tests.Loopback;

/// <summary>
/// A mail server that follows a script, one entry a connection: what it says to each command, and where it hangs up or falls silent.
/// A step is the start of what it waits for and what it then answers; see <see cref="HangUp"/> and <see cref="Silence"/>.
/// </summary>
internal sealed class ScriptedMailServer : IAsyncDisposable
{
    public const string HangUp = "\0hang up";
    public const string Silence = "\0silence";

    /// <summary>Stands for the mail itself, up to the dot that ends it.</summary>
    public const string WholeMail = "\0mail";

    private readonly TcpListener listener = new(IPAddress.Loopback, 0);
    private readonly CancellationTokenSource stop = new();
    private readonly TaskCompletionSource silent = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private readonly Task running;

    public ScriptedMailServer(params IReadOnlyList<(string Awaited, string Answer)>[] connections)
    {
        listener.Start();
        running = RunAsync(connections);
    }

    public int Port => ((IPEndPoint)listener.LocalEndpoint).Port;

    /// <summary>Every line that the server was sent.</summary>
    public ConcurrentQueue<string> Heard { get; } = [];

    /// <summary>Done when the server has fallen silent.</summary>
    public Task IsSilent => silent.Task;

    public static (string Awaited, string Answer) Greeting { get; } = ("", "220 localhost ready");

    public static (string Awaited, string Answer) Hello { get; } = ("EHLO", "250 localhost");

    public static IReadOnlyList<(string Awaited, string Answer)> UpTo(params (string Awaited, string Answer)[] rest) => [Greeting, Hello, .. rest];

    public async ValueTask DisposeAsync()
    {
        await stop.CancelAsync();
        await running;
        listener.Stop();
        stop.Dispose();
    }

    private async Task RunAsync(IReadOnlyList<IReadOnlyList<(string Awaited, string Answer)>> connections)
    {
        try
        {
            foreach (IReadOnlyList<(string Awaited, string Answer)> script in connections)
            {
                using Socket socket = await listener.AcceptSocketAsync(stop.Token);
                await using var stream = new NetworkStream(socket);
                using var reader = new StreamReader(stream, Encoding.UTF8);
                await FollowAsync(script, stream, reader);
            }
        }
        catch (Exception e) when (e is OperationCanceledException or IOException or SocketException or ObjectDisposedException)
        {
            // The other side has gone, or the test is over.
        }
    }

    private async Task FollowAsync(IReadOnlyList<(string Awaited, string Answer)> script, NetworkStream stream, StreamReader reader)
    {
        foreach ((string awaited, string answer) in script)
        {
            if (awaited.Length > 0 && !await HearAsync(awaited, reader)) return;
            if (answer == HangUp) return;
            if (answer == Silence)
            {
                silent.TrySetResult();
                while (await reader.ReadLineAsync(stop.Token) is { } line) Heard.Enqueue(line);
                return;
            }
            await stream.WriteAsync(Encoding.ASCII.GetBytes($"{answer}\r\n"), stop.Token);
        }
        while (await reader.ReadLineAsync(stop.Token) is { } line)
        {
            Heard.Enqueue(line);
            if (line == "QUIT") await stream.WriteAsync("221 goodbye\r\n"u8.ToArray(), stop.Token);
        }
    }

    private async Task<bool> HearAsync(string awaited, StreamReader reader)
    {
        while (await reader.ReadLineAsync(stop.Token) is { } line)
        {
            Heard.Enqueue(line);
            bool isIt = awaited == WholeMail ? line == "." : line.StartsWith(awaited, StringComparison.OrdinalIgnoreCase);
            if (isIt) return true;
            if (awaited != WholeMail) throw new InvalidOperationException($"The script waits for {awaited}, but heard {line}.");
        }
        return false;
    }
}
