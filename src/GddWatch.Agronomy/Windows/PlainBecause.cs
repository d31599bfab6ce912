using GddWatch.Agronomy.Quantities;

namespace GddWatch.Agronomy.Windows;

/// <summary>A reason without a number of its own, such as that the season has not begun.</summary>
/// <param name="Words">The sentence, the same in all units.</param>
public sealed record PlainBecause(string Words) : Because
{
    /// <inheritdoc/>
    public override string Sentence(ReadersUnits units) => Words;
}
