namespace GddWatch.Validation.Dates;

/// <summary>A daily temperature as the rules look at it: its 5-day mean and a slower mean. A few missing days are allowed in each.</summary>
internal sealed class TemperatureCourse
{
    private const int FastDays = 5;
    private const int FastNeeded = 4;
    private const int SlowMayLack = 4;

    /// <summary>After a longer hole nobody can say when the threshold was passed.</summary>
    private const int LongestHoleDays = 10;

    private readonly DateOnly firstDay;
    private readonly double[] fast;
    private readonly double[] slow;
    private readonly int slowDays;

    public TemperatureCourse(DateOnly firstDay, double[] dailyC, int slowDays)
    {
        this.firstDay = firstDay;
        this.slowDays = slowDays;
        fast = Mean(dailyC, FastDays, FastNeeded);
        slow = Mean(dailyC, slowDays, slowDays - SlowMayLack);
    }

    /// <summary>Whether the passage has happened before the first day that it is looked for.</summary>
    public bool IsPastAtStart(Passage passage, int year)
    {
        int from = passage.StartIn(year).DayNumber - firstDay.DayNumber;
        double first = fast.AsSpan(from, LongestHoleDays).ToArray().FirstOrDefault(value => !double.IsNaN(value), double.NaN);
        return passage.IsPast(first);
    }

    /// <summary>The first day on which the rule is fulfilled; null where there is none, or where a hole comes before it.</summary>
    public DateOnly? FirstDay(Passage passage, HoldingRule rule, int year)
    {
        if (rule.SlowMeanDays != slowDays) throw new ArgumentException($"The slower mean is over {slowDays} days, the rule asks for {rule.SlowMeanDays}.");
        int from = passage.StartIn(year).DayNumber - firstDay.DayNumber;
        int until = Math.Min(passage.EndIn(year).DayNumber - firstDay.DayNumber, fast.Length - 1);
        int unknown = 0;
        for (int day = from; day <= until; day++)
        {
            unknown = double.IsNaN(fast[day]) ? unknown + 1 : 0;
            if (unknown > LongestHoleDays) return null;
            bool near = double.IsInfinity(rule.SlackC) || passage.IsNear(slow[day], rule.SlackC);
            if (near && CountPast(passage, from, day, rule.OfDays) >= rule.DaysPast) return firstDay.AddDays(day);
        }

        return null;
    }

    /// <summary>On how many of the last days the 5-day mean is past the threshold; days before the search begins do not count.</summary>
    private int CountPast(Passage passage, int from, int day, int days)
    {
        int past = 0;
        for (int i = Math.Max(from, day - days + 1); i <= day; i++) past += passage.IsPast(fast[i]) ? 1 : 0;
        return past;
    }

    private static double[] Mean(double[] values, int days, int needed)
    {
        var means = new double[values.Length];
        for (int i = 0; i < values.Length; i++)
        {
            double sum = 0;
            int known = 0;
            for (int back = 0; back < days && back <= i; back++)
            {
                if (double.IsNaN(values[i - back])) continue;
                sum += values[i - back];
                known++;
            }

            means[i] = known >= needed ? sum / known : double.NaN;
        }

        return means;
    }
}
