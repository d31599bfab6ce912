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
    internal override void Judge(SeasonView view, DateOnly first, Span<Verdict> verdicts)
    {
        Parts[0].Judge(view, first, verdicts);
        Span<Verdict> others = verdicts.Length <= MostOnStack ? stackalloc Verdict[verdicts.Length] : new Verdict[verdicts.Length];
        // By index: going through a list behind its interface allocates, and this is asked for every season.
        for (int part = 1; part < Parts.Count && verdicts.ContainsAnyExcept(Verdict.No); part++)
        {
            Parts[part].Judge(view, first, others);
            for (int i = 0; i < verdicts.Length; i++) verdicts[i] = verdicts[i] < others[i] ? verdicts[i] : others[i];
        }
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
