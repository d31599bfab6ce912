using GddWatch.Agronomy.Journal;
using GddWatch.Agronomy.Treatments;

namespace GddWatch.Agronomy.Windows;

/// <summary>That something recorded forbids a treatment for now.</summary>
/// <param name="Exclusion">The pair that forbid each other.</param>
/// <param name="By">What was recorded.</param>
/// <param name="FreeFrom">The first day on which it no longer holds, if nothing ends it before.</param>
/// <param name="MowingsSeen">How many mowings were recorded since.</param>
public sealed record Hold(Exclusion Exclusion, TreatmentDone By, DateOnly FreeFrom, int MowingsSeen)
{
    /// <summary>What holds a treatment on a day, as recorded by then; empty where nothing recorded does.</summary>
    public static IReadOnlyList<Hold> On(Treatment treatment, SiteJournal journal, DateOnly day)
    {
        ArgumentNullException.ThrowIfNull(treatment);
        ArgumentNullException.ThrowIfNull(journal);
        if (journal.IsEmpty || treatment.Excludes.Count == 0) return [];
        List<Hold>? holds = null;
        foreach (Exclusion exclusion in treatment.Excludes)
        {
            // Of several records the one that holds longest counts.
            Hold? longest = null;
            foreach (TreatmentDone done in journal.Done(exclusion.Treatment, day))
            {
                if (Of(exclusion, done, journal, day) is { } hold && (longest is null || hold.FreeFrom > longest.FreeFrom)) longest = hold;
            }

            if (longest is not null) (holds ??= []).Add(longest);
        }

        return holds ?? [];
    }

    /// <summary>The reason with the day from which it is free, as one or two sentences.</summary>
    public Because Because()
    {
        string what = By.Active.Length > 0 ? $"{Exclusion.Name} ({By.Active})" : Exclusion.Name;
        string recorded = $"{what} is recorded for {Wording.Day(By.On)}, and the two forbid each other.";
        return new PlainBecause($"{recorded} {Frees()}");
    }

    private string Frees()
    {
        if (Exclusion.Hold.Mowings is { } needed)
        {
            return $"It is free after {needed} mowings recorded since then ({MowingsSeen} so far), or else from {Wording.Day(FreeFrom)} on; the label decides.";
        }

        return IsByLabel
            ? $"It is free from {Wording.Day(FreeFrom)} on, the date from the product's label as it was recorded."
            : $"It is free from {Wording.Day(FreeFrom)} on, after the longest usual interval; the label decides and may allow it earlier.";
    }

    private bool IsByLabel => Exclusion.Hold.LabelDateDecides && By.NoSeedUntil is not null;

    private static Hold? Of(Exclusion exclusion, TreatmentDone done, SiteJournal journal, DateOnly day)
    {
        HoldRule rule = exclusion.Hold;
        DateOnly free = rule.LabelDateDecides && done.NoSeedUntil is { } label ? label : done.On.AddDays(rule.LongestDays);
        if (day >= free) return null;
        int mowings = rule.Mowings is null ? 0 : journal.Mowings(done.On, day);
        return mowings >= rule.Mowings ? null : new Hold(exclusion, done, free, mowings);
    }
}
