using GddWatch.Agronomy.Changes;
using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Windows;

namespace GddWatch.Agronomy.Treatments.Conditions;

/// <summary>Met while the water missing from the root zone is past a share of what may be missing before the turf suffers.</summary>
/// <param name="Turf">Whose roots.</param>
/// <param name="Passing">From which side.</param>
/// <param name="ShareOfAllowed">The share of the allowed depletion; 1 is where watering is due.</param>
public sealed record RootZoneDepletionCondition(TurfType Turf, Passing Passing, double ShareOfAllowed) : Condition
{
    /// <inheritdoc/>
    public override bool IsLevel => true;

    /// <inheritdoc/>
    public override Verdict On(SeasonView view, DateOnly day)
    {
        ArgumentNullException.ThrowIfNull(view);
        (double depletion, double allowed) = view.Metrics.RootZoneAt(Turf, day);
        if (double.IsNaN(depletion) || double.IsNaN(allowed)) return Verdict.Unknown;
        bool isPast = Passing == Passing.RisesAbove ? depletion >= ShareOfAllowed * allowed : depletion <= ShareOfAllowed * allowed;
        return isPast ? Verdict.Yes : Verdict.No;
    }

    /// <inheritdoc/>
    public override Because Why(SeasonView view, DateOnly day)
    {
        ArgumentNullException.ThrowIfNull(view);
        (double depletion, double allowed) = view.Metrics.RootZoneAt(Turf, day);
        return new RootZoneBecause(this, day, depletion, allowed, view.Metrics.Site.Soil is not null);
    }

    /// <inheritdoc/>
    public override string Explain(ReadersUnits units) => $"the water missing from the root zone is {LimitWords}";

    /// <summary>The limit in words.</summary>
    internal string LimitWords => $"{(Passing == Passing.RisesAbove ? "at least" : "at most")} {GrowthPotentialCondition.Percent(ShareOfAllowed)} of what may be missing";
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
        return $"On {Wording.Day(Day)} the root zone lacked {Wording.Water(DepletionMm, units)} of water, and {Wording.Water(AllowedMm, units)} may be missing (estimated from weather, soil texture and recorded watering); {Condition.LimitWords} is looked for.";
    }

    /// <inheritdoc/>
    public override IReadOnlyList<Figure> Figures(ReadersUnits units) => double.IsNaN(DepletionMm)
        ? []
        : [new Figure("Water missing from the root zone", Wording.Water(DepletionMm, units), $"{Wording.Water(AllowedMm, units)} may be missing")];
}
