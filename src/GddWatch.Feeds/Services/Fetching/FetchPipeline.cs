using System.Net;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Http.Resilience;
using Polly;
using Polly.RateLimiting;
using Polly.Timeout;

namespace GddWatch.Feeds.Services.Fetching;

/// <summary>
/// Puts the client together: repetitions, circuit breaker, pace and time limit, in this order from outside to inside, for each host of its own. The body is read
/// inside, so that all of it holds for slow and broken bodies too.
/// </summary>
internal static class FetchPipeline
{
    public const string ClientName = "weather services";

    public static ServiceProvider Build(ServiceClient who, FetchLimits limits, TimeProvider clock)
    {
        var services = new ServiceCollection();
        services.AddSingleton(clock);
        IHttpClientBuilder client = services.AddHttpClient(ClientName, http =>
        {
            // The time limit of an attempt is the pipeline's, by the clock that was given.
            http.Timeout = Timeout.InfiniteTimeSpan;
            http.DefaultRequestHeaders.TryAddWithoutValidation("User-Agent", who.UserAgent);
            http.DefaultRequestHeaders.TryAddWithoutValidation("Accept", "application/json, application/geo+json");
        });
        client.ConfigurePrimaryHttpMessageHandler(() => new SocketsHttpHandler
        {
            AllowAutoRedirect = false,
            AutomaticDecompression = DecompressionMethods.All,
            ConnectCallback = PublicAddress.ConnectAsync,
            MaxConnectionsPerServer = limits.AtOnce,
            MaxResponseHeadersLength = 64,
            PooledConnectionLifetime = TimeSpan.FromMinutes(10),
            UseCookies = false,
            // A proxy would resolve names by itself, past the check of addresses.
            UseProxy = false,
        });
        client.AddResilienceHandler("weather", (pipeline, context) => Configure(pipeline, context.InstanceName, limits, clock)).SelectPipelineByAuthority();
        client.AddHttpMessageHandler(() => new WholeReplyHandler(limits.ReplyBytes));
        return services.BuildServiceProvider();
    }

    private static void Configure(ResiliencePipelineBuilder<HttpResponseMessage> pipeline, string? authority, FetchLimits limits, TimeProvider clock)
    {
        pipeline.TimeProvider = clock;
        if (limits.Retries > 0) pipeline.AddRetry(Retries(limits, clock));
        pipeline.AddCircuitBreaker(new HttpCircuitBreakerStrategyOptions
        {
            FailureRatio = 0.5,
            MinimumThroughput = limits.BreakAfter,
            SamplingDuration = limits.Break,
            BreakDuration = limits.Break,
            ShouldHandle = outcome => ValueTask.FromResult(IsTransient(outcome.Outcome)),
        });
        bool isThisMachine = Uri.TryCreate(authority, UriKind.Absolute, out Uri? host) && host.IsLoopback;
        if (!isThisMachine)
        {
            SteadyPace pace = new(clock, TimeSpan.FromMinutes(1) / limits.PerMinute, limits.AtOnce);
            pipeline.AddRateLimiter(new RateLimiterStrategyOptions { RateLimiter = args => pace.AcquireAsync(1, args.Context.CancellationToken) });
        }

        pipeline.AddTimeout(new HttpTimeoutStrategyOptions { Timeout = limits.Attempt });
    }

    private static HttpRetryStrategyOptions Retries(FetchLimits limits, TimeProvider clock) => new()
    {
        MaxRetryAttempts = limits.Retries,
        Delay = limits.FirstWait,
        MaxDelay = limits.LongestWait,
        BackoffType = DelayBackoffType.Exponential,
        UseJitter = true,
        // The package's own reading of the header goes by the machine's clock.
        ShouldRetryAfterHeader = false,
        DelayGenerator = args => ValueTask.FromResult(RetryAfter.Of(args.Outcome.Result, clock)),
        ShouldHandle = args => ValueTask.FromResult(IsTransient(args.Outcome) && !(RetryAfter.Of(args.Outcome.Result, clock) > limits.LongestWait)),
    };

    // A certificate or an address does not get better by asking again; a busy server or a broken line may.
    private static bool IsTransient(Outcome<HttpResponseMessage> outcome) => outcome.Exception switch
    {
        null => outcome.Result is { StatusCode: >= HttpStatusCode.InternalServerError or HttpStatusCode.RequestTimeout or HttpStatusCode.TooManyRequests },
        HttpRequestException { HttpRequestError: HttpRequestError.SecureConnectionError } => false,
        HttpRequestException { InnerException: PrivateAddressException } => false,
        HttpRequestException or IOException or TimeoutRejectedException => true,
        _ => false,
    };
}
