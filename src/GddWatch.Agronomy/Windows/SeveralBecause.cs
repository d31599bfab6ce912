using GddWatch.Agronomy.Changes;
using GddWatch.Agronomy.Quantities;

namespace GddWatch.Agronomy.Windows;

/// <summary>Several reasons that hold together.</summary>
/// <param name="Parts">The reasons, in order.</param>
public sealed record SeveralBecause(IReadOnlyList<Because> Parts) : Because
{
    /// <summary>Words with which reasons begin and which are small within a sentence; weekdays and months stay as they are.</summary>
    private static readonly string[] OpeningWords = ["The ", "It ", "Its ", "On "];

    /// <summary>One reason as itself, several as one.</summary>
    public static Because Of(IReadOnlyList<Because> parts)
    {
        ArgumentNullException.ThrowIfNull(parts);
        return parts.Count == 1 ? parts[0] : new SeveralBecause(parts);
    }

    /// <inheritdoc/>
    public override bool RestsOnSoil => Parts.Any(part => part.RestsOnSoil);

    /// <inheritdoc/>
    public override bool RestsOnFallback => Parts.Any(part => part.RestsOnFallback);

    /// <inheritdoc/>
    public override string Sentence(ReadersUnits units)
    {
        // One sentence of several parts: each keeps its words and loses its full stop but the last.
        string[] parts = [.. Parts.Select(part => part.Sentence(units))];
        return string.Join("; ", parts.Select((part, index) => Continued(index == parts.Length - 1 ? part : part.TrimEnd('.'), isFirst: index == 0)));
    }

    internal override Because Made() => new SeveralBecause([.. Parts.Select(part => part.Made())]);

    private static string Continued(string part, bool isFirst) =>
        !isFirst && OpeningWords.Any(word => part.StartsWith(word, StringComparison.Ordinal)) ? $"{char.ToLowerInvariant(part[0])}{part[1..]}" : part;

    /// <inheritdoc/>
    public override IReadOnlyList<Figure> Figures(ReadersUnits units) => [.. Parts.SelectMany(part => part.Figures(units))];
}
