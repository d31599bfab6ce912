namespace GddWatch.Configuration.Yaml;

/// <summary>A part of a YAML file: a single value, a list, or a group of keys. Nothing in it is shared, so a tree is as large as its text.</summary>
public abstract record YamlTree(Place Place)
{
    /// <summary>What it is, for a person.</summary>
    public abstract string Kind { get; }
}

/// <summary>A single value.</summary>
public sealed record YamlValue(Place Place, string Text, bool IsQuoted) : YamlTree(Place)
{
    /// <inheritdoc/>
    public override string Kind => IsAbsent ? "nothing" : "a single value";

    /// <summary>Whether nothing was written where a value is due.</summary>
    public bool IsAbsent => !IsQuoted && Text is "" or "~" or "null";
}

/// <summary>A list.</summary>
public sealed record YamlList(Place Place, IReadOnlyList<YamlTree> Items) : YamlTree(Place)
{
    /// <inheritdoc/>
    public override string Kind => "a list";
}

/// <summary>A group of keys with their values, in the order of the file; no key comes twice.</summary>
public sealed record YamlGroup(Place Place, IReadOnlyList<KeyValuePair<YamlValue, YamlTree>> Entries) : YamlTree(Place)
{
    /// <inheritdoc/>
    public override string Kind => "a group of keys";
}
