using System.Collections.Concurrent;
using System.Net;
using System.Net.Sockets;
using System.Security.Cryptography.X509Certificates;
using MimeKit;
using SmtpServer;
using SmtpServer.Authentication;
using SmtpServer.ComponentModel;
using SmtpServer.Mail;
using SmtpServer.Storage;
using Answer = SmtpServer.Protocol.SmtpResponse;
using Code = SmtpServer.Protocol.SmtpReplyCode;

namespace GddWatch.Tests.Loopback;

/// <summary>A real mail server inside the test, on this machine alone: STARTTLS, a login, and an answer that the test chooses.</summary>
internal sealed class LoopbackMailServer : IAsyncDisposable
{
    public const string User = "windows";
    public const string Password = "a quiet secret";

    private readonly CancellationTokenSource stop = new();
    private readonly Task running;
    private int sessions;

    public LoopbackMailServer(X509Certificate2 certificate, bool tlsFromTheStart = false)
    {
        Port = FreePort();
        ISmtpServerOptions options = new SmtpServerOptionsBuilder()
            .ServerName("localhost")
            .Endpoint(endpoint => endpoint
                .Endpoint(new IPEndPoint(IPAddress.Loopback, Port)).Certificate(certificate).IsSecure(tlsFromTheStart).AuthenticationRequired())
            .Build();
        var services = new ServiceProvider();
        services.Add(new Store(this));
        services.Add(new Login());
        var server = new SmtpServer.SmtpServer(options, services);
        server.SessionCreated += (_, _) => Interlocked.Increment(ref sessions);
        running = server.StartAsync(stop.Token);
    }

    public int Port { get; }

    public int Sessions => sessions;

    public ConcurrentQueue<MimeMessage> Received { get; } = [];

    /// <summary>What the server answers to the next mails, in order; it accepts when there is nothing left.</summary>
    public ConcurrentQueue<Answer> Answers { get; } = [];

    public static Answer Refusal(int code, string words) => new((Code)code, words);

    public static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }

    public async ValueTask DisposeAsync()
    {
        await stop.CancelAsync();
        await running;
        stop.Dispose();
    }

    private sealed class Store(LoopbackMailServer server) : MessageStore
    {
        public override Task<Answer> SaveAsync(
            ISessionContext context, IMessageTransaction transaction, System.Buffers.ReadOnlySequence<byte> buffer, CancellationToken cancellationToken)
        {
            if (server.Answers.TryDequeue(out Answer? refusal)) return Task.FromResult(refusal);
            using var stream = new MemoryStream(System.Buffers.BuffersExtensions.ToArray(buffer));
            server.Received.Enqueue(MimeMessage.Load(stream, cancellationToken));
            return Task.FromResult(Answer.Ok);
        }
    }

    private sealed class Login : UserAuthenticator
    {
        public override Task<bool> AuthenticateAsync(ISessionContext context, string user, string password, CancellationToken cancellationToken) =>
            Task.FromResult(user == User && password == Password);
    }
}
