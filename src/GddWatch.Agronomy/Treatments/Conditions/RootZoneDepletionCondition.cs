using GddWatch.Agronomy.Changes;
using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Windows;

namespace GddWatch.Agronomy.Treatments.Conditions;

/// <summary>Met while the water missing from the root zone is past a depth of water, or past a share of what may be missing before the turf suffers.</summary>
/// <param name="Turf">Whose roots.</param>
/// <param name="Passing">From which side.</param>
/// <param name="ShareOfAllowed">The share of the allowed depletion; 1 is where watering is due; null where a depth is given.</param>
/// <param name="Depth">The depth; null where a share is given.</param>
public sealed record RootZoneDepletionCondition(TurfType Turf, Passing Passing, double? ShareOfAllowed, WaterDepth? Depth = null) : Condition
{
    /// <inheritdoc/>
    public override bool IsLevel => true;

    /// <inheritdoc/>
    internal override void Judge(SeasonView view, DateOnly first, Span<Verdict> verdicts)
    {
        double[] missing = view.Metrics.RootZoneDepletionMm(Turf), allowed = view.Metrics.RootZoneAllowedMm(Turf);
        int index = view.Metrics.Series.IndexOf(first);
        for (int i = 0; i < verdicts.Length; i++)
        {
            bool isThere = (uint)(index + i) < (uint)missing.Length;
            double depletion = isThere ? missing[index + i] : double.NaN;
            double limit = Depth is { } depth ? depth.Millimetres : isThere ? ShareOfAllowed!.Value * allowed[index + i] : double.NaN;
            bool isPast = Passing == Passing.RisesAbove ? depletion >= limit : depletion <= limit;
            verdicts[i] = double.IsNaN(depletion) || double.IsNaN(limit) ? Verdict.Unknown : isPast ? Verdict.Yes : Verdict.No;
        }
    }

    /// <inheritdoc/>
    public override Because Why(SeasonView view, DateOnly day)
    {
        ArgumentNullException.ThrowIfNull(view);
        (double depletion, double allowed) = view.Metrics.RootZoneAt(Turf, day);
        return new RootZoneBecause(this, day, depletion, allowed, view.Metrics.Site.Soil is not null);
    }

    /// <inheritdoc/>
    public override string Explain(ReadersUnits units) => $"the water missing from the root zone is {LimitWords(units)}";

    /// <summary>The limit in words.</summary>
    internal string LimitWords(ReadersUnits units)
    {
        string side = Passing == Passing.RisesAbove ? "at least" : "at most";
        return Depth is { } depth ? $"{side} {Wording.Water(depth.Millimetres, units)}" : $"{side} {GrowthPotentialCondition.Percent(ShareOfAllowed!.Value)} of what may be missing";
    }
}

/// <summary>How much water is missing from the root zone on a day.</summary>
/// <param name="Condition">What it was held against.</param>
/// <param name="Day">The day.</param>
/// <param name="DepletionMm">What is missing [mm], NaN where it is not known.</param>
/// <param name="AllowedMm">What may be missing before the turf suffers [mm].</param>
/// <param name="SoilIsKnown">Whether the texture of the site's soil is known.</param>
public sealed record RootZoneBecause(RootZoneDepletionCondition Condition, DateOnly Day, double DepletionMm, double AllowedMm, bool SoilIsKnown) : Because
{
    /// <inheritdoc/>
    public override string Sentence(ReadersUnits units)
    {
        if (!SoilIsKnown) return "The water in the root zone is not known: the site's soil texture is not configured.";
        if (double.IsNaN(DepletionMm)) return $"The water in the root zone is not known on {Wording.Day(Day)}: temperatures or rain are missing.";
        if (double.IsNaN(AllowedMm) && Condition.Depth is null) return $"How much water may be missing from the root zone is not known on {Wording.Day(Day)}: a week of temperatures is needed.";
        string allowed = double.IsNaN(AllowedMm) ? "" : $", and {Wording.Water(AllowedMm, units)} may be missing";
        return $"On {Wording.Day(Day)} the root zone lacked {Wording.Water(DepletionMm, units)} of water{allowed} (estimated from weather, soil texture and recorded watering); {Condition.LimitWords(units)} is looked for.";
    }

    /// <inheritdoc/>
    public override IReadOnlyList<Figure> Figures(ReadersUnits units) => double.IsNaN(DepletionMm) || double.IsNaN(AllowedMm)
        ? []
        : [new Figure("Water missing from the root zone", Wording.Water(DepletionMm, units), $"{Wording.Water(AllowedMm, units)} may be missing")];
}
