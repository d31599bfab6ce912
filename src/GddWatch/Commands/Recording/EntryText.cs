namespace GddWatch.Commands.Recording;

/// <summary>A journal entry as somebody wrote it, on the command line or in a row of a file; null where nothing was written.</summary>
internal sealed record EntryText
{
    public string? Kind { get; init; }

    public string? Site { get; init; }

    public string? On { get; init; }

    public string? At { get; init; }

    public string? Treatment { get; init; }

    public string? Active { get; init; }

    public string? NoSeedUntil { get; init; }

    public string? What { get; init; }

    public string? Depth { get; init; }

    public string? Value { get; init; }

    public string? Note { get; init; }
}
