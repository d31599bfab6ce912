using System.Net;
using System.Net.Http.Headers;
using GddWatch.Feeds.Faults;
using Microsoft.Extensions.DependencyInjection;
using Polly.CircuitBreaker;
using Polly.Timeout;

namespace GddWatch.Feeds.Services.Fetching;

/// <summary>Gets JSON from a service, or says in words why not.</summary>
internal sealed class Fetcher : IDisposable
{
    private readonly ServiceProvider provider;
    private readonly FetchLimits limits;
    private readonly TimeProvider clock;
    private readonly ReplyMemory memory;
    private readonly IHttpClientFactory clients;

    public Fetcher(ServiceClient who, FetchLimits limits, TimeProvider clock, ReplyMemory memory)
    {
        this.limits = limits;
        this.clock = clock;
        this.memory = memory;
        provider = FetchPipeline.Build(who, limits, clock);
        clients = provider.GetRequiredService<IHttpClientFactory>();
    }

    public FetchLimits Limits => limits;

    public DateTimeOffset Now => clock.GetUtcNow();

    /// <summary>Asks an address. Throws for the stop alone.</summary>
    /// <param name="source">The service as faults name it.</param>
    /// <param name="address">The address.</param>
    /// <param name="stop">Stops it.</param>
    public async Task<FetchedReply> GetAsync(string source, Uri address, CancellationToken stop)
    {
        if (address.Scheme != Uri.UriSchemeHttps && !address.IsLoopback) return Failed(FetchFaults.NotSecure(source));
        try
        {
            return await FollowAsync(source, address, stop);
        }
        catch (Exception failure) when (!stop.IsCancellationRequested && FaultOf(source, failure) is { } fault)
        {
            return Failed(fault);
        }
    }

    /// <summary>Forgets a reply that could not be read: asked whether it has changed, a service would never send it again.</summary>
    public void Forget(FetchedReply reply)
    {
        if (reply.Address is { } address) memory.Forget(address);
    }

    public void Dispose() => provider.Dispose();

    private async Task<FetchedReply> FollowAsync(string source, Uri asked, CancellationToken stop)
    {
        Uri address = asked;
        for (int hops = 0; ; hops++)
        {
            KeptReply? kept = memory.Of(address);
            using HttpRequestMessage request = new(HttpMethod.Get, address);
            if (kept?.ETag is { } tag && EntityTagHeaderValue.TryParse(tag, out EntityTagHeaderValue? parsed)) request.Headers.IfNoneMatch.Add(parsed);
            if (kept?.LastModified is { } changed) request.Headers.IfModifiedSince = changed;
            using HttpClient client = clients.CreateClient(FetchPipeline.ClientName);
            using HttpResponseMessage response = await client.SendAsync(request, HttpCompletionOption.ResponseHeadersRead, stop);
            if (!IsRedirect(response.StatusCode)) return await BelieveAsync(source, address, response, kept, stop);
            string target = response.Headers.NonValidated.TryGetValues("Location", out HeaderStringValues values) ? values.ToString() : "";
            if (hops == limits.Redirects) return Failed(FetchFaults.Redirect(source, target, "it was sent on too often."));
            if (!Uri.TryCreate(address, target, out Uri? next) || target.Length == 0) return Failed(FetchFaults.Redirect(source, target, "that is not an address."));
            if (WhyNotTo(asked, next) is { } why) return Failed(FetchFaults.Redirect(source, target, why));
            address = next;
        }
    }

    private static bool IsRedirect(HttpStatusCode status) =>
        status is HttpStatusCode.MovedPermanently or HttpStatusCode.Found or HttpStatusCode.SeeOther or HttpStatusCode.TemporaryRedirect or HttpStatusCode.PermanentRedirect;

    private static string? WhyNotTo(Uri asked, Uri next)
    {
        if (next.Scheme != asked.Scheme) return $"it is another way of asking than {asked.Scheme}.";
        if (asked.IsLoopback) return next.Host == asked.Host && next.Port == asked.Port ? null : "a service on this machine may send to itself alone.";
        if (next.IsLoopback) return "it is this machine.";
        return IPAddress.TryParse(next.IdnHost, out IPAddress? address) && !PublicAddress.Is(address) ? "it is a private network." : null;
    }

    private async Task<FetchedReply> BelieveAsync(string source, Uri address, HttpResponseMessage response, KeptReply? kept, CancellationToken stop)
    {
        HttpStatusCode status = response.StatusCode;
        if (status == HttpStatusCode.NotModified && kept is not null) return new FetchedReply(kept.Body, null, status, address);
        byte[] body = await response.Content.ReadAsByteArrayAsync(stop);
        string start = ReplyJson.Start(body);
        TimeSpan? wait = RetryAfter.Of(response, clock);
        if (status == HttpStatusCode.TooManyRequests || wait is not null && (int)status >= 500) return new FetchedReply(default, FetchFaults.AsksToWait(source, (int)status, wait), status);
        if (status != HttpStatusCode.OK) return new FetchedReply(default, FetchFaults.Status(source, (int)status, start), status);
        MediaTypeHeaderValue? type = response.Content.Headers.ContentType;
        if (type?.MediaType is not { } media || !IsJson(media)) return new FetchedReply(default, FetchFaults.NotJsonType(source, type?.MediaType ?? "of no kind", start), status);
        if (type.CharSet?.Trim('"') is { Length: > 0 } charset && !charset.Equals("utf-8", StringComparison.OrdinalIgnoreCase) && !charset.Equals("us-ascii", StringComparison.OrdinalIgnoreCase))
        {
            return new FetchedReply(default, FetchFaults.Charset(source, charset), status);
        }

        string? tag = response.Headers.ETag?.ToString();
        DateTimeOffset? changed = response.Content.Headers.LastModified;
        if (tag is not null || changed is not null) memory.Keep(new KeptReply(address, tag, changed, body));
        return new FetchedReply(body, null, status, address);
    }

    private static bool IsJson(string media) =>
        media.Equals("application/json", StringComparison.OrdinalIgnoreCase)
        || (media.StartsWith("application/", StringComparison.OrdinalIgnoreCase) && media.EndsWith("+json", StringComparison.OrdinalIgnoreCase));

    private static FetchedReply Failed(Fault fault) => new(default, fault, null);

    private Fault? FaultOf(string source, Exception failure) => failure switch
    {
        TimeoutRejectedException => FetchFaults.Slow(source, limits.Attempt),
        BrokenCircuitException => FetchFaults.NotAsked(source, limits.Break),
        ReplyTooLargeException or HttpRequestException { InnerException: ReplyTooLargeException } => FetchFaults.TooLarge(source, limits.ReplyBytes),
        PrivateAddressException or HttpRequestException { InnerException: PrivateAddressException } => FetchFaults.Private(source),
        InvalidDataException or HttpRequestException { InnerException: InvalidDataException } => FetchFaults.Unpackable(source),
        HttpRequestException { HttpRequestError: HttpRequestError.SecureConnectionError } => FetchFaults.Tls(source),
        HttpRequestException { HttpRequestError: HttpRequestError.NameResolutionError } => FetchFaults.Unreachable(source, "its name leads nowhere."),
        HttpRequestException { HttpRequestError: HttpRequestError.ConnectionError } => FetchFaults.Unreachable(source, "nobody answers at its address."),
        HttpRequestException or IOException => FetchFaults.CutShort(source),
        OperationCanceledException => FetchFaults.Slow(source, limits.Attempt),
        _ => null,
    };
}
