namespace GddWatch.Notices;

/// <summary>What became of one attempt to deliver a message. The cases are all there are.</summary>
public abstract record DeliveryOutcome
{
    private DeliveryOutcome()
    {
    }

    /// <summary>The other side has it.</summary>
    /// <param name="Where">Where it went: the file, or the server's words.</param>
    public sealed record Accepted(string Where) : DeliveryOutcome;

    /// <summary>Not now; it may be tried again.</summary>
    /// <param name="Words">The server's words, or what went wrong on the way.</param>
    public sealed record RefusedForNow(string Words) : DeliveryOutcome
    {
        /// <summary>Whether it is no matter of this one mail: the next would fare no better.</summary>
        public bool ConcernsAll { get; init; }
    }

    /// <summary>Never: trying again would not help.</summary>
    /// <param name="Words">The server's words.</param>
    public sealed record RefusedForGood(string Words) : DeliveryOutcome;

    /// <summary>The line broke after the message was handed over and before the answer: it may or may not have arrived.</summary>
    /// <param name="Words">What went wrong.</param>
    public sealed record Unknown(string Words) : DeliveryOutcome;
}
