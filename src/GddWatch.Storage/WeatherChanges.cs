namespace GddWatch.Storage;

/// <summary>What keeping a reading changed.</summary>
/// <param name="Added">How many values were new.</param>
/// <param name="Changed">The values that the sources have changed.</param>
/// <param name="Remarks">What is odd about a feed: it went back in time, or its station moved; a site's id, the feed, the kind of oddity and a sentence each.</param>
public sealed record WeatherChanges(int Added, IReadOnlyList<KeptChange> Changed, IReadOnlyList<(string Site, string Feed, string Kind, string Words)> Remarks);
