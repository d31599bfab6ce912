using Polly;
using Polly.Retry;

namespace GddWatch.Storage.Dialects;

/// <summary>How long a database that does not answer is waited for.</summary>
/// <param name="Attempts">How often work is begun again.</param>
/// <param name="First">The first pause; each further one is twice as long.</param>
/// <param name="Longest">The longest pause.</param>
internal sealed record Patience(int Attempts, TimeSpan First, TimeSpan Longest)
{
    /// <summary>Three quarters of a minute: longer than a server takes to start again.</summary>
    public static Patience Usual { get; } = new(8, TimeSpan.FromSeconds(0.5), TimeSpan.FromSeconds(10));

    public ResiliencePipeline Pipeline(TimeProvider clock, Func<Exception, bool> mayPass, Action<Exception, TimeSpan> say) =>
        new ResiliencePipelineBuilder { TimeProvider = clock }.AddRetry(new RetryStrategyOptions
        {
            ShouldHandle = outcome => ValueTask.FromResult(outcome.Outcome.Exception is { } fault && mayPass(fault)),
            BackoffType = DelayBackoffType.Exponential,
            MaxRetryAttempts = Attempts,
            Delay = First,
            MaxDelay = Longest,
            OnRetry = retry =>
            {
                say(retry.Outcome.Exception!, retry.RetryDelay);
                return ValueTask.CompletedTask;
            },
        }).Build();
}
