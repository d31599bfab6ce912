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

    /// <summary>Whether an estimate or a measurement of the soil is part of it.</summary>
    public virtual bool RestsOnSoil => false;

    /// <summary>Whether a stated fallback stands in for what is usual at the site, since too few earlier seasons are known.</summary>
    public virtual bool RestsOnFallback => false;

    /// <summary>The same reason, made now where it would be made only when it is read: it needs the weather behind it no longer.</summary>
    internal virtual Because Made() => this;

    /// <summary>The numbers behind it, for a table; may be none.</summary>
    public virtual IReadOnlyList<Figure> Figures(ReadersUnits units) => [];
}
