using GddWatch.Agronomy.Changes;
using GddWatch.Agronomy.Quantities;

namespace GddWatch.Agronomy.Windows;

/// <summary>
/// The reason of a state: the numbers that decided it, kept in metric, and told in the units of whoever reads. Cases stand in the files of what they
/// report on.
/// </summary>
public abstract record Because
{
    private protected Because()
    {
    }

    /// <summary>The reason as one plain sentence, or several, with units and weekdays.</summary>
    public abstract string Sentence(ReadersUnits units);

    /// <summary>The numbers behind it, for a table; may be none.</summary>
    public virtual IReadOnlyList<Figure> Figures(ReadersUnits units) => [];
}
