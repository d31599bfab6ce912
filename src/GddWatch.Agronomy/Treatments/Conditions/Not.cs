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
    internal override void Judge(SeasonView view, DateOnly first, Span<Verdict> verdicts)
    {
        Part.Judge(view, first, verdicts);
        for (int i = 0; i < verdicts.Length; i++) verdicts[i] = (Verdict)(Verdict.Yes - verdicts[i]);
    }

    /// <inheritdoc/>
    public override Because Why(SeasonView view, DateOnly day) => Part.Why(view, day);

    /// <inheritdoc/>
    public override string Explain(ReadersUnits units) => $"it is not so that {Part.Explain(units)}";
}
