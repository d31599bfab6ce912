using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Windows;

namespace GddWatch.Agronomy.Treatments.Conditions;

/// <summary>Met on a day as soon as one part is met.</summary>
/// <param name="Parts">The parts, at least one.</param>
public sealed record AnyOf(IReadOnlyList<Condition> Parts) : Condition
{
    /// <inheritdoc/>
    public override IReadOnlyList<Condition> Parts { get; } = Parts;

    /// <inheritdoc/>
    public override IReadOnlyCollection<string> NeededRecords => Parts.Select(part => part.NeededRecords).Aggregate((one, other) => [.. one.Intersect(other, StringComparer.Ordinal)]);

    /// <inheritdoc/>
    internal override void Judge(SeasonView view, DateOnly first, Span<Verdict> verdicts)
    {
        Parts[0].Judge(view, first, verdicts);
        Span<Verdict> others = verdicts.Length <= MostOnStack ? stackalloc Verdict[verdicts.Length] : new Verdict[verdicts.Length];
        // By index: going through a list behind its interface allocates, and this is asked for every season.
        for (int part = 1; part < Parts.Count && verdicts.ContainsAnyExcept(Verdict.Yes); part++)
        {
            Parts[part].Judge(view, first, others);
            for (int i = 0; i < verdicts.Length; i++) verdicts[i] = verdicts[i] > others[i] ? verdicts[i] : others[i];
        }
    }

    /// <summary>The first part that decided where it is met; all that are in the way where it is not.</summary>
    public override Because Why(SeasonView view, DateOnly day)
    {
        Verdict whole = On(view, day);
        var whys = new List<Because>();
        foreach (Condition part in Parts)
        {
            if (part.On(view, day) != whole) continue;
            whys.Add(part.Why(view, day));
            if (whole == Verdict.Yes) break;
        }

        return SeveralBecause.Of(whys);
    }

    /// <inheritdoc/>
    public override string Explain(ReadersUnits units) => string.Join(", or ", Parts.Select(part => part.Parts.Count > 1 ? $"({part.Explain(units)})" : part.Explain(units)));
}
