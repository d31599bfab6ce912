using System.Globalization;
using System.Net.Security;
using System.Net.Sockets;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;
using MailKit.Net.Smtp;
using MailKit.Security;
using Polly;
using Polly.Retry;

namespace GddWatch.Notices.Channels;

/// <summary>The one connection to a mail server, kept open for many mails.</summary>
internal sealed class SmtpConnection : IDisposable
{
    private const int MostRepetitions = 2;

    private static readonly TimeSpan FirstPause = TimeSpan.FromSeconds(2);

    private readonly SmtpOptions options;
    private readonly TimeProvider time;
    private readonly ResiliencePipeline connecting;
    private SmtpClient? client;

    public SmtpConnection(SmtpOptions options, TimeProvider time)
    {
        this.options = options;
        this.time = time;
        connecting = new ResiliencePipelineBuilder { TimeProvider = time }.AddRetry(new RetryStrategyOptions
        {
            MaxRetryAttempts = MostRepetitions,
            Delay = FirstPause,
            BackoffType = DelayBackoffType.Exponential,
            UseJitter = true,
            // A wrong password or certificate does not get better by asking again; a busy server or a broken line may.
            ShouldHandle = new PredicateBuilder()
                .Handle<SocketException>().Handle<IOException>().Handle<SmtpProtocolException>().Handle<TimeoutException>()
                .Handle<SmtpCommandException>(e => (int)e.StatusCode < 500),
        }).Build();
    }

    /// <summary>Why the last certificate was not accepted, in words; empty where it was.</summary>
    public string CertificateTrouble { get; private set; } = "";

    public bool IsOpen => client is { IsConnected: true };

    /// <summary>How long opening can take at most. The pauses double, and chance makes one a few times as long.</summary>
    public static TimeSpan LongestOpening(TimeSpan timeout) => ((MostRepetitions + 1) * timeout) + (20 * FirstPause);

    /// <summary>The open connection, made and logged in where there is none.</summary>
    public async Task<SmtpClient> OpenAsync(CancellationToken stop)
    {
        if (client is { IsConnected: true } open) return open;
        Drop();
        client = await connecting.ExecuteAsync(async token => await ConnectAsync(token), stop);
        return client;
    }

    /// <summary>Closes without a word: the line is broken, or in a state that nobody knows.</summary>
    public void Drop()
    {
        client?.Dispose();
        client = null;
    }

    /// <summary>Says goodbye and closes.</summary>
    public async Task CloseAsync()
    {
        if (client is { IsConnected: true } open)
        {
            using var limit = new CancellationTokenSource(TimeSpan.FromSeconds(2), time);
            try
            {
                await open.DisconnectAsync(quit: true, limit.Token);
            }
            catch (Exception e) when (
                e is IOException or SocketException or SmtpProtocolException or SmtpCommandException or TimeoutException or OperationCanceledException)
            {
                // The server is free to hang up first: there was nothing left to say.
            }
        }
        Drop();
    }

    public void Dispose() => Drop();

    private async Task<SmtpClient> ConnectAsync(CancellationToken stop)
    {
        using var limit = new CancellationTokenSource(options.Timeout, time);
        using var either = CancellationTokenSource.CreateLinkedTokenSource(limit.Token, stop);
        var fresh = new SmtpClient
        {
            Timeout = (int)options.Timeout.TotalMilliseconds,
            // An authority of one's own keeps no list of what it has revoked.
            CheckCertificateRevocation = options.PinnedHash() is null && options.AuthorityFile.Length == 0,
            ServerCertificateValidationCallback = (_, certificate, chain, errors) => IsTrusted(certificate, chain, errors),
        };
        // Without waiting for more to send, and without commands sent ahead, a mail takes a fraction of the time.
        var socket = new Socket(SocketType.Stream, ProtocolType.Tcp) { NoDelay = true };
        try
        {
            await socket.ConnectAsync(options.Host, options.Port, either.Token);
            await fresh.ConnectAsync(socket, options.Host, options.Port, SecurityOf(options.Security), either.Token);
            if (options.User.Length > 0) await fresh.AuthenticateAsync(options.User, options.Password, either.Token);
            fresh.Capabilities &= ~(SmtpCapabilities.Pipelining | SmtpCapabilities.Chunking | SmtpCapabilities.BinaryMime);
            return fresh;
        }
        catch (OperationCanceledException e) when (!stop.IsCancellationRequested)
        {
            fresh.Dispose();
            socket.Dispose();
            throw new TimeoutException($"There was no answer within {options.Timeout.TotalSeconds.ToString("0.#", CultureInfo.InvariantCulture)} s.", e);
        }
        catch
        {
            fresh.Dispose();
            socket.Dispose();
            throw;
        }
    }

    private bool IsTrusted(X509Certificate? certificate, X509Chain? shown, SslPolicyErrors errors)
    {
        CertificateTrouble = "";
        if (certificate is null)
        {
            CertificateTrouble = "it showed no certificate";
            return false;
        }
        byte[] hash = SHA256.HashData(certificate.GetRawCertData());
        if (options.PinnedHash() is { } pinned)
        {
            if (CryptographicOperations.FixedTimeEquals(hash, pinned)) return true;
            CertificateTrouble = $"it is not the pinned one; its SHA-256 is {Convert.ToHexStringLower(hash)}";
            return false;
        }
        if (errors == SslPolicyErrors.None) return true;
        if (options.AuthorityFile.Length > 0 && (errors & ~SslPolicyErrors.RemoteCertificateChainErrors) == SslPolicyErrors.None && IsVouchedFor(certificate, shown)) return true;
        string reason = errors.HasFlag(SslPolicyErrors.RemoteCertificateNameMismatch)
            ? "it is made out to another name"
            : "no authority known here vouches for it, or it is out of date";
        CertificateTrouble = $"{reason}; its SHA-256 is {Convert.ToHexStringLower(hash)}";
        return false;
    }

    /// <summary>Whether an authority of the configured file vouches for a certificate, by what the server showed beside it.</summary>
    private bool IsVouchedFor(X509Certificate certificate, X509Chain? shown)
    {
        var authorities = new X509Certificate2Collection();
        authorities.ImportFromPemFile(options.AuthorityFile);
        using var chain = new X509Chain();
        chain.ChainPolicy.TrustMode = X509ChainTrustMode.CustomRootTrust;
        chain.ChainPolicy.CustomTrustStore.AddRange(authorities);
        chain.ChainPolicy.RevocationMode = X509RevocationMode.NoCheck;
        // For servers, not for people or programs (RFC 5280, extended key usage).
        chain.ChainPolicy.ApplicationPolicy.Add(new Oid("1.3.6.1.5.5.7.3.1"));
        if (shown is not null) chain.ChainPolicy.ExtraStore.AddRange(shown.ChainElements.Select(element => element.Certificate).ToArray());
        using X509Certificate2 own = X509CertificateLoader.LoadCertificate(certificate.GetRawCertData());
        return chain.Build(own);
    }

    private static SecureSocketOptions SecurityOf(SmtpSecurity security) => security switch
    {
        SmtpSecurity.StartTls => SecureSocketOptions.StartTls,
        SmtpSecurity.ImplicitTls => SecureSocketOptions.SslOnConnect,
        SmtpSecurity.None => SecureSocketOptions.None,
        _ => throw new ArgumentOutOfRangeException(nameof(security), security, "This kind of security is not known."),
    };
}
