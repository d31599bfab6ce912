using GddWatch.Agronomy.Treatments;

namespace GddWatch.Agronomy.Weather.Checks;

/// <summary>
/// Doubts months that are a copy of another one, and months with the same minimum and maximum on many days.
/// <para>A month is a copy where every value equals that of the same day of an earlier month of the year, or of the same month of any earlier year, up to the
/// last day that both have; with at least <see cref="LeastValues"/> values, and the same days missing. Nobody can tell which of the two is the copy: both are
/// doubted. A whole year that is a copy is found month by month.</para>
/// <para>At least <see cref="LeastFlatDays"/> days of a month with Tn = Tx: the whole month is doubted, both variables.</para>
/// <para>Known from the month's last day on; days without a range from the tenth such day on, and each later day of that month on its own day. That a month
/// repeats another is no matter of climate: one earlier year is enough.</para>
/// <para>Source: Durre et al. 2010, J. Appl. Meteorol. Climatol. 49:1615-1633; rules SEEN in an open implementation, which asks for 28 equal values or equal
/// missing days; here 20 values, so that a copied month with a few holes is found.</para>
/// </summary>
internal sealed class DuplicateCheck(CheckedValues values)
{
    /// <summary>How many values two months must share to be judged [values].</summary>
    public const int LeastValues = 20;

    /// <summary>How many days with Tn = Tx make a month doubted [days].</summary>
    public const int LeastFlatDays = 10;

    private int flatDays;

    /// <summary>The same check, to go on over other days.</summary>
    public DuplicateCheck In(CheckedValues other) => new(other) { flatDays = flatDays };

    public void Judge(int today)
    {
        DateOnly day = values.DayAt(today);
        if (day.Day == 1) flatDays = 0;
        JudgeFlatDays(today, day);
        if (day.AddDays(1).Day == 1) JudgeCopies(today, new DateOnly(day.Year, day.Month, 1));
    }

    private void JudgeFlatDays(int today, DateOnly day)
    {
        double minimumC = values.SeenBy(QualityCheck.Duplicate, WeatherVariable.MinimumAirC, today);
        if (minimumC == values.SeenBy(QualityCheck.Duplicate, WeatherVariable.MaximumAirC, today)) flatDays++;
        if (flatDays < LeastFlatDays) return;
        string why = $"{DoubtWords.Month(day.Month)} {day.Year} has {Wording.Days(flatDays)} up to {Wording.Day(day)} with the same minimum and maximum.";
        for (int index = Math.Max(0, today - day.Day + 1); index <= today; index++)
        {
            foreach (WeatherVariable variable in CheckedValues.Variables)
            {
                if (!double.IsNaN(values.SeenBy(QualityCheck.Duplicate, variable, index))) values.Doubt(QualityCheck.Duplicate, variable, index, today, why);
            }
        }
    }

    private void JudgeCopies(int today, DateOnly month)
    {
        for (DateOnly other = new(month.Year, 1, 1); other < month; other = other.AddMonths(1)) JudgePair(today, month, other);
        DateOnly first = values.DayAt(0);
        for (DateOnly other = month.AddYears(-1); other >= first.AddDays(-31); other = other.AddYears(-1)) JudgePair(today, month, other);
    }

    private void JudgePair(int today, DateOnly month, DateOnly other)
    {
        (int from, int otherFrom) = (values.IndexOf(month), values.IndexOf(other));
        foreach (WeatherVariable variable in CheckedValues.Variables)
        {
            // Hardly any month is a copy, and most differ on their first day.
            if (!IsSame(variable, from, otherFrom) || !IsCopy(variable, month, other)) continue;
            string why = $"The {DoubtWords.Name(variable)} of every day of {Name(month)} equals that of the same day of {Name(other)}: one of the two months is a copy.";
            foreach (DateOnly each in (ReadOnlySpan<DateOnly>)[other, month])
            {
                for (int i = 0; i < DateTime.DaysInMonth(each.Year, each.Month); i++)
                {
                    int index = values.IndexOf(each) + i;
                    if (!double.IsNaN(values.SeenBy(QualityCheck.Duplicate, variable, index))) values.Doubt(QualityCheck.Duplicate, variable, index, today, why);
                }
            }
        }
    }

    private bool IsCopy(WeatherVariable variable, DateOnly month, DateOnly other)
    {
        int days = Math.Min(DateTime.DaysInMonth(month.Year, month.Month), DateTime.DaysInMonth(other.Year, other.Month));
        int from = values.IndexOf(month);
        int otherFrom = values.IndexOf(other);
        int equal = 0;
        for (int i = 0; i < days; i++)
        {
            if (!IsSame(variable, from + i, otherFrom + i)) return false;
            if (!double.IsNaN(values.SeenBy(QualityCheck.Duplicate, variable, from + i))) equal++;
        }

        return equal >= LeastValues;
    }

    private bool IsSame(WeatherVariable variable, int index, int other) =>
        values.SeenBy(QualityCheck.Duplicate, variable, index).Equals(values.SeenBy(QualityCheck.Duplicate, variable, other));

    private static string Name(DateOnly month) => $"{DoubtWords.Month(month.Month)} {month.Year}";
}
