namespace GddWatch.Agronomy.Changes;

/// <summary>What goes to one person in one mail: notices about windows, or word to the operator about the service itself.</summary>
public sealed record Message
{
    /// <summary>Tells this message from all others; made from the keys of its notices and its addressee, so that a repeat is recognisably the same.</summary>
    public required string MessageId { get; init; }

    /// <summary>The addressee.</summary>
    public required string Address { get; init; }

    /// <summary>The addressee's name; may be empty.</summary>
    public string AddresseeName { get; init; } = "";

    /// <summary>The region's name.</summary>
    public required string Region { get; init; }

    /// <summary>The sentence at the foot of the mail; may be empty.</summary>
    public string Remark { get; init; } = "";

    /// <summary>The address to which the reader can answer or ask not to be written to.</summary>
    public required string OperatorAddress { get; init; }

    /// <summary>The day whose judging made it.</summary>
    public required DateOnly Day { get; init; }

    /// <summary>The notices, in order; empty for word to the operator.</summary>
    public required IReadOnlyList<Notice> Notices { get; init; }

    /// <summary>The weekly overview; null where the message is another one.</summary>
    public Bulletin? Bulletin { get; init; }

    /// <summary>What the operator is told about the service, a sentence each; empty for notices.</summary>
    public IReadOnlyList<string> OperatorWords { get; init; } = [];
}
