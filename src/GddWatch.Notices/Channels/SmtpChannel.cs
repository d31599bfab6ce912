using System.Net.Sockets;
using MailKit;
using MailKit.Net.Smtp;
using MailKit.Security;
using MimeKit;

namespace GddWatch.Notices.Channels;

/// <summary>Sends mails through a mail server, one after the other over one connection.</summary>
public sealed class SmtpChannel : IDeliveryChannel
{
    // A mail half handed over is worth a little patience when the service stops: its answer tells whether it arrived.
    private static readonly TimeSpan PatienceWhenStopped = TimeSpan.FromSeconds(5);

    private readonly SmtpOptions options;
    private readonly TimeProvider time;
    private readonly MailboxAddress sender;
    private readonly SmtpWords words;
    private readonly SmtpConnection connection;
    private readonly MinuteLimit limit;
    private readonly SemaphoreSlim oneAtATime = new(1);

    /// <summary>Makes the channel; it connects at the first mail.</summary>
    /// <exception cref="ArgumentException">The options are not valid; <see cref="SmtpOptions.Validate"/> says what is wrong.</exception>
    public SmtpChannel(SmtpOptions options, TimeProvider time)
    {
        ArgumentNullException.ThrowIfNull(options);
        ArgumentNullException.ThrowIfNull(time);
        IReadOnlyList<string> wrong = options.Validate();
        if (wrong.Count > 0) throw new ArgumentException(string.Join(" ", wrong), nameof(options));
        this.options = options;
        this.time = time;
        sender = MailboxAddress.Parse(options.From);
        words = new(options);
        connection = new(options, time);
        limit = new(options.MostPerMinute, time);
    }

    /// <inheritdoc/>
    public string Name => $"the mail server {options.Host}:{options.Port}";

    /// <inheritdoc/>
    // The turn, and twice: the attempts to connect with their pauses, the mail.
    public TimeSpan LongestDelivery => TimeSpan.FromMinutes(1) + (2 * (SmtpConnection.LongestOpening(options.Timeout) + options.Timeout + PatienceWhenStopped));

    /// <inheritdoc/>
    public async Task<DeliveryOutcome> DeliverAsync(MimeMessage message, CancellationToken stop)
    {
        ArgumentNullException.ThrowIfNull(message);
        if (!message.To.Mailboxes.Any()) return new DeliveryOutcome.RefusedForGood("The mail has no addressee.");
        await oneAtATime.WaitAsync(stop);
        try
        {
            await limit.TakeTurnAsync(stop);
            bool isReused = connection.IsOpen;
            Attempt attempt = await AttemptAsync(message, stop);
            // A server may close a line that was idle; that is no reason to make the mail wait.
            return isReused && attempt.LineWasBroken ? (await AttemptAsync(message, stop)).Outcome : attempt.Outcome;
        }
        finally
        {
            oneAtATime.Release();
        }
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        await connection.CloseAsync();
        connection.Dispose();
        oneAtATime.Dispose();
    }

    private async Task<Attempt> AttemptAsync(MimeMessage message, CancellationToken stop)
    {
        SmtpClient client;
        try
        {
            client = await connection.OpenAsync(stop);
        }
        catch (Exception e) when (e is not OperationCanceledException)
        {
            connection.Drop();
            return new(new DeliveryOutcome.RefusedForNow(words.NotConnected(e, connection.CertificateTrouble)) { ConcernsAll = true });
        }
        return await HandOverAsync(client, message, stop);
    }

    private async Task<Attempt> HandOverAsync(SmtpClient client, MimeMessage message, CancellationToken stop)
    {
        var handOver = new HandOver();
        using var timeUp = new CancellationTokenSource();
        await using ITimer clock = time.CreateTimer(_ => timeUp.Cancel(), null, options.Timeout, Timeout.InfiniteTimeSpan);
        await using CancellationTokenRegistration stopping = stop.Register(() =>
        {
            if (handOver.HasBegun)
            {
                clock.Change(PatienceWhenStopped, Timeout.InfiniteTimeSpan);
            }
            else
            {
                timeUp.Cancel();
            }
        });
        try
        {
            string answer = await client.SendAsync(FormatOptions.Default, message, sender, message.To.Mailboxes, timeUp.Token, handOver);
            return new(new DeliveryOutcome.Accepted(words.Clean(answer)));
        }
        catch (SmtpCommandException e)
        {
            // 421: the server says that it is hanging up.
            if (e.StatusCode == SmtpStatusCode.ServiceNotAvailable || !client.IsConnected) connection.Drop();
            return new(words.Refused(e));
        }
        catch (ServiceNotAuthenticatedException e)
        {
            connection.Drop();
            return new(new DeliveryOutcome.RefusedForNow(words.WantsLogin(e)) { ConcernsAll = true });
        }
        catch (NotSupportedException e)
        {
            return new(new DeliveryOutcome.RefusedForGood(words.CannotTake(e)));
        }
        catch (Exception e) when (handOver.HasBegun)
        {
            connection.Drop();
            return new(new DeliveryOutcome.Unknown(words.Broken(e)));
        }
        catch (OperationCanceledException) when (stop.IsCancellationRequested)
        {
            connection.Drop();
            throw;
        }
        catch (Exception e)
        {
            connection.Drop();
            bool isBroken = e is IOException or SocketException or SmtpProtocolException or ServiceNotConnectedException;
            return new(new DeliveryOutcome.RefusedForNow(words.Broken(e)) { ConcernsAll = true }, isBroken);
        }
    }

    private readonly record struct Attempt(DeliveryOutcome Outcome, bool LineWasBroken = false);
}
