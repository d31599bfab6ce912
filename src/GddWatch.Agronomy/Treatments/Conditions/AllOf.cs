using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Windows;

namespace GddWatch.Agronomy.Treatments.Conditions;

/// <summary>Met on a day when every part is met; not met as soon as one part is not.</summary>
/// <param name="Parts">The parts, at least one.</param>
public sealed record AllOf(IReadOnlyList<Condition> Parts) : Condition
{
    /// <inheritdoc/>
    public override IReadOnlyList<Condition> Parts { get; } = Parts;

    /// <inheritdoc/>
    public override IReadOnlyCollection<string> NeededRecords => [.. Parts.SelectMany(part => part.NeededRecords).Distinct(StringComparer.Ordinal)];

    /// <inheritdoc/>
    public override Verdict On(SeasonView view, DateOnly day)
    {
        Verdict verdict = Verdict.Yes;
        // By index: going through a list behind its interface allocates, and this is asked on every day.
        for (int i = 0; i < Parts.Count; i++)
        {
            Verdict found = Parts[i].On(view, day);
            if (found == Verdict.No) return Verdict.No;
            if (found == Verdict.Unknown) verdict = Verdict.Unknown;
        }

        return verdict;
    }

    /// <summary>The parts that decided: those in the way where it is not met, all of them where it is.</summary>
    public override Because Why(SeasonView view, DateOnly day)
    {
        Verdict whole = On(view, day);
        var whys = new List<Because>();
        foreach (Condition part in Parts)
        {
            if (part.On(view, day) == whole) whys.Add(part.Why(view, day));
        }

        return SeveralBecause.Of(whys);
    }

    /// <inheritdoc/>
    public override string Explain(ReadersUnits units) => string.Join(", and ", Parts.Select(part => part.Parts.Count > 1 ? $"({part.Explain(units)})" : part.Explain(units)));
}
