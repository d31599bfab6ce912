namespace GddWatch.Configuration.Yaml;

/// <summary>A value and where it was written, so that what is wrong with it can be shown there.</summary>
/// <typeparam name="T">What the text was read as.</typeparam>
public sealed record Placed<T>(T Value, Place Place)
    where T : notnull;

/// <summary>A list and where it begins.</summary>
/// <typeparam name="T">A placed value or a group of keys.</typeparam>
/// <param name="Items">The entries that could be read.</param>
/// <param name="Written">How many were written, good or not.</param>
/// <param name="Place">Where it begins.</param>
public sealed record PlacedList<T>(IReadOnlyList<T> Items, int Written, Place Place);

/// <summary>Names that a person chose, each with what it stands for.</summary>
/// <typeparam name="T">A placed value or a group of keys.</typeparam>
public sealed record PlacedNames<T>(IReadOnlyList<KeyValuePair<Placed<string>, T>> Entries, Place Place);

/// <summary>The word "all", or a list of names.</summary>
/// <param name="Some">The names; null is all.</param>
/// <param name="Place">Where it was written.</param>
public sealed record AllOrSome(PlacedList<Placed<string>>? Some, Place Place)
{
    /// <summary>The names; null is all.</summary>
    public IReadOnlyList<Placed<string>>? Names => Some?.Items;
}

/// <summary>A group of known keys. Every member of a derived type is a key, in lower case with hyphens; a member is null where the key is absent or was wrong.</summary>
public abstract record TextGroup
{
    /// <summary>Where the group begins.</summary>
    public Place Place { get; init; } = new(1, 1, null);

    /// <summary>The keys that were written, good or not; a fault about their absence would be wrong.</summary>
    public IReadOnlyList<string> WrittenKeys { get; init; } = [];
}
