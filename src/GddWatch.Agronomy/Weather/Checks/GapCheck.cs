namespace GddWatch.Agronomy.Weather.Checks;

/// <summary>
/// Doubts a value that lies apart from all other values of its calendar month.
/// <para>The values of the calendar month in earlier years, sorted, from the median outward: the first gap of at least <see cref="LeastGapC"/> ends the known
/// range on that side. A value that lies that far or farther outside of the known range is doubted; one that lies nearer widens it for the rest of the month.</para>
/// <para>Judges only where at least <see cref="EarlierYears.LeastYears"/> earlier years know half of the month; the first years of a record are never judged
/// later. A missing value is not judged. Known on the day itself.</para>
/// <para>Source: Durre et al. 2010, J. Appl. Meteorol. Climatol. 49:1615-1633; threshold SEEN in an open implementation. The publication sorts all years of the
/// record together, later ones too; that cannot be known on the day.</para>
/// </summary>
internal sealed class GapCheck(CheckedValues values, EarlierYears years)
{
    /// <summary>How wide a gap is too wide [°C].</summary>
    public const double LeastGapC = 10.0;

    // Differences of tenths of a degree: 25.0 − 15.1 and 25.1 − 15.1 must fall on their own sides.
    private const double RoundingC = 1e-9;

    private readonly (double LowestC, double HighestC)[] ranges = new (double, double)[2];
    private readonly (int Version, int Month)[] of = [(-1, 0), (-1, 0)];

    /// <summary>The same check, to go on over other days.</summary>
    public GapCheck In(CheckedValues otherValues, EarlierYears otherYears)
    {
        var check = new GapCheck(otherValues, otherYears);
        ranges.CopyTo(check.ranges, 0);
        of.CopyTo(check.of, 0);
        return check;
    }

    /// <summary>Whether a difference is too wide [°C].</summary>
    public static bool IsGap(double differenceC) => differenceC >= LeastGapC - RoundingC;

    public void Judge(int today)
    {
        int month = values.MonthAt(today);
        foreach (WeatherVariable variable in CheckedValues.Variables)
        {
            double valueC = values.SeenBy(QualityCheck.Gap, variable, today);
            MonthRecord record = years.Month(variable, month);
            if (double.IsNaN(valueC) || record.Years < EarlierYears.LeastYears) continue;
            ref (double LowestC, double HighestC) range = ref ranges[(int)variable];
            if (of[(int)variable] != (years.Version, month))
            {
                of[(int)variable] = (years.Version, month);
                range = record.RangeAroundMedian();
            }

            double outsideC = Math.Max(range.LowestC - valueC, valueC - range.HighestC);
            if (!IsGap(outsideC))
            {
                range = (Math.Min(range.LowestC, valueC), Math.Max(range.HighestC, valueC));
                continue;
            }

            string usual = $"{DoubtWords.Degrees(range.LowestC)} to {DoubtWords.Degrees(range.HighestC)}";
            values.Doubt(
                QualityCheck.Gap, variable, today, today,
                $"{DoubtWords.Subject(variable, values.DayAt(today), valueC)} is {DoubtWords.Difference(outsideC)} away from every other one in {DoubtWords.Month(month)} of {record.Years} earlier years, {usual}.");
        }
    }
}
