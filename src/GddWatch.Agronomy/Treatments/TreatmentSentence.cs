using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Quantities;

namespace GddWatch.Agronomy.Treatments;

/// <summary>A treatment explained in one plain sentence, made from its conditions.</summary>
public static class TreatmentSentence
{
    /// <summary>The sentence, in a reader's units.</summary>
    public static string Of(Treatment treatment, ReadersUnits units)
    {
        string turf = Wording.List([.. treatment.Turf.Select(TurfWord)]);
        string sentence = $"{treatment.Name}, for {turf} turf, is looked for from {Wording.AnnualDay(treatment.Season.From)} to {Wording.AnnualDay(treatment.Season.Until)} (half a year later in the south); it opens when {treatment.Opens.Explain(units)}";
        if (treatment.Closing is { } closing) sentence += $"; it is past its best when {closing.Explain(units)}";
        sentence += treatment.Closed is { } closed
            ? $"; it closes when {closed.Explain(units)}, or with its season."
            : "; it closes with its season.";
        if (treatment.Paused is { } paused) sentence += $" While {paused.Explain(units)}, an open window waits.";
        if (treatment.AgainAfterDays is { } again) sentence += $" It may be done again after {Wording.Days(again)}.";
        foreach (Exclusion exclusion in treatment.Excludes) sentence += $" {HoldSentence(exclusion)}";
        if (treatment.OnlyWithHistory is { } history) sentence += $" People are told only at sites with {history} in their history.";
        if (treatment.BulletinOnly) sentence += " It is told in the bulletin alone.";
        if (treatment.OnlyWithGrass.Count > 0) sentence += $" People are told only where {Wording.Alternatives(treatment.OnlyWithGrass)} grows.";
        return sentence;
    }

    private static string HoldSentence(Exclusion exclusion)
    {
        string label = exclusion.Hold.LabelDateDecides ? "until the date on its label where that is recorded, else " : "";
        string mowings = exclusion.Hold.Mowings is { } count ? $"until {count} mowings are recorded, or else " : "";
        return $"Once {exclusion.Name} is recorded it is held {label}{mowings}for {Wording.Days(exclusion.Hold.LongestDays)}.";
    }

    /// <summary>The word for a family of turf.</summary>
    public static string TurfWord(TurfType turf) => turf == TurfType.CoolSeason ? "cool-season" : "warm-season";
}
