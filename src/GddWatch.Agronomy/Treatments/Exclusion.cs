namespace GddWatch.Agronomy.Treatments;

/// <summary>That one treatment and another forbid each other.</summary>
/// <param name="Treatment">The id of the other treatment.</param>
/// <param name="Name">The other treatment's name, for people.</param>
/// <param name="Choice">The choice in a sentence, such as "A pre-emergent also stops grass seed: choose one of the two for an area."</param>
/// <param name="NotRecorded">What is not known, and what follows, in a sentence.</param>
/// <param name="Hold">How long this treatment is held once the other one is recorded.</param>
public sealed record Exclusion(string Treatment, string Name, string Choice, string NotRecorded, HoldRule Hold);
