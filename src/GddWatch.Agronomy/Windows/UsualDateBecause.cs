using GddWatch.Agronomy.Quantities;

namespace GddWatch.Agronomy.Windows;

/// <summary>A reason that rests on what is usual at the site.</summary>
/// <param name="Words">The sentence, the same in all units.</param>
/// <param name="Usual">The usual date.</param>
public sealed record UsualDateBecause(string Words, UsualDate Usual) : Because
{
    /// <inheritdoc/>
    public override bool RestsOnFallback => Usual.IsFallback;

    /// <inheritdoc/>
    public override string Sentence(ReadersUnits units) => Words;
}
