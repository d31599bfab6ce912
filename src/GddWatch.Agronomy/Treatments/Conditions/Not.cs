using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Windows;

namespace GddWatch.Agronomy.Treatments.Conditions;

/// <summary>Met on a day when its part is not; what is unknown stays unknown.</summary>
/// <param name="Part">The condition turned round.</param>
public sealed record Not(Condition Part) : Condition
{
    /// <inheritdoc/>
    public override IReadOnlyList<Condition> Parts => [Part];

    /// <inheritdoc/>
    public override Verdict On(SeasonView view, DateOnly day) => Part.On(view, day) switch
    {
        Verdict.Yes => Verdict.No,
        Verdict.No => Verdict.Yes,
        _ => Verdict.Unknown,
    };

    /// <inheritdoc/>
    public override Because Why(SeasonView view, DateOnly day) => Part.Why(view, day);

    /// <inheritdoc/>
    public override string Explain(ReadersUnits units) => $"it is not so that {Part.Explain(units)}";
}
