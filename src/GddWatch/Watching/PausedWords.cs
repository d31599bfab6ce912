using GddWatch.Agronomy.Treatments;
using GddWatch.Storage;

namespace GddWatch.Watching;

/// <summary>What is said of an address to which nothing is sent any more.</summary>
internal static class PausedWords
{
    /// <summary>What to do about it.</summary>
    public static string Advice(string address) =>
        $"Correct the address in region.yaml; or, once its mailbox takes mail again, run \"gddwatch resume {address}\": from the next daily pass on it is told how things stand then.";

    /// <summary>The address, since when, and what its server said.</summary>
    public static string Of(RefusingAddress refusing) => refusing.PausedAt is { } since
        ? $"Paused: {refusing.Address}, since {Wording.Day(DateOnly.FromDateTime(since.UtcDateTime))}, after {refusing.Refusals} mails that were refused for good; {refusing.LastWords} {Advice(refusing.Address)}"
        : "";
}
