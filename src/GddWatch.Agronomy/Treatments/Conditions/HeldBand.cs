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
    /// <summary>The verdicts of some days in a row.</summary>
    /// <param name="values">One value a day.</param>
    /// <param name="today">The first of the days as a place among the values.</param>
    /// <param name="first">The place of the season's first day; may lie before the first value.</param>
    /// <param name="band">The band.</param>
    /// <param name="holding">On how many of the last days.</param>
    /// <param name="stays">The wider band; null where the value must go on being in the band.</param>
    /// <param name="verdicts">Room for a verdict a day.</param>
    public static void Judge(ReadOnlySpan<double> values, int today, int first, Band band, Holding holding, Band? stays, Span<Verdict> verdicts)
    {
        // What a day before the asked ones met may be kept by the wider band: from the season's start on.
        int i = stays is null ? today : Math.Min(today, Math.Max(first, 0));
        (int inBand, int known) = Count(values, i - 1, band, holding.OfDays);
        // Days of the season before the first value: it may have been met on them.
        Verdict before = Verdict.Unknown;
        for (; i < today + verdicts.Length; i++)
        {
            double value = At(values, i);
            double past = At(values, i - holding.OfDays);
            inBand += (band.Holds(value) ? 1 : 0) - (band.Holds(past) ? 1 : 0);
            known += (double.IsNaN(value) ? 0 : 1) - (double.IsNaN(past) ? 0 : 1);
            Verdict verdict = inBand >= holding.Days ? Verdict.Yes : inBand + (holding.OfDays - known) >= holding.Days ? Verdict.Unknown : Verdict.No;
            if (stays is { } wide && i > first) verdict = Most(verdict, Least(Lies(value, wide), before));
            before = verdict;
            if (i >= today) verdicts[i - today] = verdict;
        }
    }

    /// <summary>On how many of the last days the value lay in the band, and on how many it is known.</summary>
    public static (int In, int Known) Count(ReadOnlySpan<double> values, int today, Band band, int ofDays)
    {
        int inBand = 0;
        int known = 0;
        for (int back = 0; back < ofDays; back++)
        {
            double value = At(values, today - back);
            if (double.IsNaN(value)) continue;
            known++;
            if (band.Holds(value)) inBand++;
        }

        return (inBand, known);
    }

    private static double At(ReadOnlySpan<double> values, int index) => (uint)index < (uint)values.Length ? values[index] : double.NaN;

    private static Verdict Least(Verdict one, Verdict other) => one < other ? one : other;

    private static Verdict Most(Verdict one, Verdict other) => one > other ? one : other;

    private static Verdict Lies(double value, Band band) => double.IsNaN(value) ? Verdict.Unknown : band.Holds(value) ? Verdict.Yes : Verdict.No;
}
