namespace GddWatch.Feeds;

/// <summary>What is odd about a feed and should be looked at by the operator, though its values are used.</summary>
/// <param name="Key">The same for as long as it is the same oddity, whatever its figures are by now.</param>
/// <param name="Words">The oddity in a sentence.</param>
public sealed record FeedRemark(string Key, string Words);
