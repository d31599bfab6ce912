namespace GddWatch.Agronomy.Treatments.Conditions;

/// <summary>
/// The one way in which a daily value is judged: it must lie in a band on enough of the last days, so that a short spell does not count; where a wider band is given,
/// once met it stays met until the value leaves the wider one, so that a value at the threshold does not flap.
/// <para>A day's verdict uses that day and earlier ones only. Days before the season's start count for the holding, since warmth does not begin with a season;
/// what the wider band keeps is looked for from the season's start on, so that each season starts afresh.</para>
/// <para>Missing values (NaN), and the season's days before the first value, leave it unknown wherever they could decide and nowhere else.</para>
/// </summary>
internal static class HeldBand
{
    /// <summary>The verdict of a day.</summary>
    /// <param name="values">One value a day.</param>
    /// <param name="today">The day's place among the values.</param>
    /// <param name="first">The place of the season's first day; may lie before the first value.</param>
    /// <param name="band">The band.</param>
    /// <param name="holding">On how many of the last days.</param>
    /// <param name="stays">The wider band; null where the value must go on being in the band.</param>
    public static Verdict On(double[] values, int today, int first, Band band, Holding holding, Band? stays)
    {
        Verdict verdict = Held(values, today, band, holding);
        if (stays is not { } wide) return verdict;
        Verdict kept = Verdict.Yes;
        for (int i = today; verdict != Verdict.Yes && i > first; i--)
        {
            kept = Least(kept, Lies(values, i, wide));
            if (kept == Verdict.No) break;
            // Days of the season before the first value: it may have been met on them.
            Verdict then = i > 0 ? Held(values, i - 1, band, holding) : Verdict.Unknown;
            verdict = Most(verdict, Least(kept, then));
            if (i <= 0) break;
        }

        return verdict;
    }

    /// <summary>On how many of the last days the value lay in the band, and on how many it is known.</summary>
    public static (int In, int Known) Count(double[] values, int today, Band band, int ofDays)
    {
        int inBand = 0;
        int known = 0;
        for (int back = 0; back < ofDays; back++)
        {
            int index = today - back;
            if ((uint)index >= (uint)values.Length || double.IsNaN(values[index])) continue;
            known++;
            if (band.Holds(values[index])) inBand++;
        }

        return (inBand, known);
    }

    private static Verdict Least(Verdict one, Verdict other) => one < other ? one : other;

    private static Verdict Most(Verdict one, Verdict other) => one > other ? one : other;

    private static Verdict Lies(double[] values, int index, Band band)
    {
        if ((uint)index >= (uint)values.Length || double.IsNaN(values[index])) return Verdict.Unknown;
        return band.Holds(values[index]) ? Verdict.Yes : Verdict.No;
    }

    private static Verdict Held(double[] values, int today, Band band, Holding holding)
    {
        (int inBand, int known) = Count(values, today, band, holding.OfDays);
        if (inBand >= holding.Days) return Verdict.Yes;
        return inBand + (holding.OfDays - known) >= holding.Days ? Verdict.Unknown : Verdict.No;
    }
}
