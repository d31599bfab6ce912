using System.Collections.Concurrent;
using System.Globalization;
using System.Net;
using System.Net.Security;
using System.Net.Sockets;
using System.Security.Cryptography.X509Certificates;
using System.Text;
using GddWatch.Tests.Loopback;

namespace GddWatch.Tests.Feeds.Services;

/// <summary>A weather service on this machine that answers, byte for byte, as a test says.</summary>
internal sealed class WeatherHost : IAsyncDisposable
{
    /// <summary>Writes an answer; false hangs up after it.</summary>
    public delegate Task<bool> Answer(Asked asked, Stream stream, CancellationToken stop);

    private readonly TcpListener listener = new(IPAddress.Loopback, 0);
    private readonly CancellationTokenSource stop = new();
    private readonly ConcurrentBag<Task> talks = [];
    private readonly Answer answer;
    private readonly X509Certificate2? certificate;
    private readonly Task running;

    public WeatherHost(Answer answer, bool isTls = false)
    {
        this.answer = answer;
        certificate = isTls ? TestCertificate.SelfSigned() : null;
        listener.Start();
        Address = new Uri($"{(isTls ? "https" : "http")}://127.0.0.1:{((IPEndPoint)listener.LocalEndpoint).Port}/");
        running = RunAsync();
    }

    /// <summary>One that answers each request with whole bytes.</summary>
    public WeatherHost(Func<Asked, byte[]> answer)
        : this(async (asked, stream, stop) =>
        {
            await stream.WriteAsync(answer(asked), stop);
            return true;
        })
    {
    }

    public Uri Address { get; }

    public ConcurrentQueue<Asked> All { get; } = [];

    /// <summary>A whole answer with JSON in it.</summary>
    public static byte[] Json(string json, params string[] headers) => Whole(200, Encoding.UTF8.GetBytes(json), ["Content-Type: application/json; charset=utf-8", .. headers]);

    /// <summary>A whole answer.</summary>
    public static byte[] Whole(int status, byte[] body, params string[] headers)
    {
        string head = $"HTTP/1.1 {status.ToString(CultureInfo.InvariantCulture)} Said\r\nContent-Length: {body.Length.ToString(CultureInfo.InvariantCulture)}\r\n{string.Concat(headers.Select(each => each + "\r\n"))}\r\n";
        return [.. Encoding.ASCII.GetBytes(head), .. body];
    }

    public static byte[] Whole(int status, string body, params string[] headers) => Whole(status, Encoding.UTF8.GetBytes(body), headers);

    public async ValueTask DisposeAsync()
    {
        await stop.CancelAsync();
        await running;
        listener.Stop();
        await Task.WhenAll(talks);
        stop.Dispose();
        certificate?.Dispose();
    }

    private async Task RunAsync()
    {
        try
        {
            while (true) talks.Add(TalkAsync(await listener.AcceptSocketAsync(stop.Token)));
        }
        catch (Exception e) when (e is OperationCanceledException or SocketException or ObjectDisposedException)
        {
            // The test is over.
        }
    }

    private async Task TalkAsync(Socket socket)
    {
        try
        {
            await using NetworkStream plain = new(socket, ownsSocket: true);
            await using Stream stream = certificate is null ? plain : new SslStream(plain);
            if (stream is SslStream secured) await secured.AuthenticateAsServerAsync(new SslServerAuthenticationOptions { ServerCertificate = certificate }, stop.Token);
            using StreamReader reader = new(stream, Encoding.ASCII, leaveOpen: true);
            while (await ReadAsync(reader) is { } asked)
            {
                All.Enqueue(asked);
                if (!await answer(asked, stream, stop.Token)) return;
            }
        }
        catch (Exception e) when (e is OperationCanceledException or IOException or SocketException or ObjectDisposedException or System.Security.Authentication.AuthenticationException)
        {
            // The other side has gone, or the test is over.
        }
    }

    private async Task<Asked?> ReadAsync(StreamReader reader)
    {
        if (await reader.ReadLineAsync(stop.Token) is not { Length: > 0 } first) return null;
        Dictionary<string, string> headers = new(StringComparer.OrdinalIgnoreCase);
        while (await reader.ReadLineAsync(stop.Token) is { Length: > 0 } line)
        {
            int colon = line.IndexOf(':', StringComparison.Ordinal);
            headers[line[..colon]] = line[(colon + 1)..].Trim();
        }

        return new Asked(first.Split(' ')[1], headers);
    }
}

/// <summary>What the host was asked.</summary>
internal sealed record Asked(string Target, IReadOnlyDictionary<string, string> Headers)
{
    public string Path => Target.Split('?')[0];

    /// <summary>A parameter of the query, or null.</summary>
    public string? this[string name] => Target.Split('?') is [_, { } query]
        ? query.Split('&').Select(each => each.Split('=', 2)).Where(each => each[0] == name).Select(each => Uri.UnescapeDataString(each[1])).FirstOrDefault()
        : null;
}
