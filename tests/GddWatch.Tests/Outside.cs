using Xunit;

namespace GddWatch.Tests;

/// <summary>What a test needs from outside the repository: measured weather, a database server, a mail server.</summary>
internal static class Outside
{
    /// <summary>
    /// Ends the test, since what it needs is not there: it is skipped with the reason, or fails where the environment variable GDDWATCH_REQUIRE names it.
    /// </summary>
    /// <param name="what">The word for it in that variable: shared, postgres or mail.</param>
    /// <param name="reason">What is not there, in a sentence.</param>
    public static void Missing(string what, string reason)
    {
        string[] required = Environment.GetEnvironmentVariable("GDDWATCH_REQUIRE")?.Split(',', StringSplitOptions.TrimEntries) ?? [];
        if (required.Contains(what, StringComparer.Ordinal)) Assert.Fail(reason);
        Assert.Skip(reason);
    }
}
