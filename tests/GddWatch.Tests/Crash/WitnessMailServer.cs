using System.Collections.Concurrent;
using System.Net;
using GddWatch.Tests.Loopback;
using MimeKit;
using SmtpServer;
using SmtpServer.ComponentModel;
using SmtpServer.Protocol;
using SmtpServer.Storage;

namespace GddWatch.Tests.Crash;

/// <summary>A real mail server of this machine that keeps everything it accepts, as often as it comes, and tells at which step each mail is.</summary>
internal sealed class WitnessMailServer : IAsyncDisposable
{
    private readonly CancellationTokenSource stop = new();
    private readonly Task running;

    // By name, not by number: a session that fails may also be told as ended.
    private readonly ConcurrentDictionary<ISessionContext, bool> open = [];

    public WitnessMailServer()
    {
        ISmtpServerOptions options = new SmtpServerOptionsBuilder().ServerName("localhost").Endpoint(endpoint => endpoint.Endpoint(new IPEndPoint(IPAddress.Loopback, Port))).Build();
        var services = new ServiceProvider();
        services.Add(new Store(this));
        var server = new SmtpServer.SmtpServer(options, services);
        server.SessionCreated += (_, session) =>
        {
            open[session.Context] = true;
            session.Context.CommandExecuting += (_, step) => Pass(step.Command);
            session.Context.CommandExecuted += (_, step) =>
            {
                if (step.Command is DataCommand) At(SmtpStep.Answered);
            };
            At(SmtpStep.Connected);
        };
        server.SessionCompleted += (_, session) => open.TryRemove(session.Context, out bool _);
        server.SessionFaulted += (_, session) => open.TryRemove(session.Context, out bool _);
        server.SessionCancelled += (_, session) => open.TryRemove(session.Context, out bool _);
        running = server.StartAsync(stop.Token);
    }

    public int Port { get; } = LoopbackMailServer.FreePort();

    /// <summary>Told of each step; answers whether the sender is gone since, so that what it had not handed over is not accepted.</summary>
    public Func<SmtpStep, bool> At { get; set; } = _ => false;

    /// <summary>Every mail that was accepted.</summary>
    public ConcurrentQueue<(string MessageId, byte[] Bytes)> Accepted { get; } = [];

    /// <summary>Waits until nobody speaks with it any more, so that what is accepted is final.</summary>
    public async Task BecomesQuietAsync(CancellationToken cancel)
    {
        while (!open.IsEmpty) await Task.Delay(2, cancel);
    }

    public async ValueTask DisposeAsync()
    {
        await stop.CancelAsync();
        await running;
        stop.Dispose();
    }

    private void Pass(SmtpCommand command)
    {
        if (command is MailCommand) At(SmtpStep.Sender);
        if (command is RcptCommand) At(SmtpStep.Recipient);
    }

    private sealed class Store(WitnessMailServer server) : MessageStore
    {
        public override Task<SmtpResponse> SaveAsync(ISessionContext context, IMessageTransaction transaction, System.Buffers.ReadOnlySequence<byte> buffer, CancellationToken cancellationToken)
        {
            if (server.At(SmtpStep.BeforeAcceptance)) return Task.FromResult(SmtpResponse.TransactionFailed);
            byte[] bytes = System.Buffers.BuffersExtensions.ToArray(buffer);
            using var stream = new MemoryStream(bytes);
            server.Accepted.Enqueue((MimeMessage.Load(stream, cancellationToken).MessageId ?? "", bytes));
            server.At(SmtpStep.AcceptedUnanswered);
            return Task.FromResult(SmtpResponse.Ok);
        }
    }
}
