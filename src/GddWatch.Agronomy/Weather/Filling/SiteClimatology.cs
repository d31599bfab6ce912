using GddWatch.Agronomy.Quantities;

namespace GddWatch.Agronomy.Weather.Filling;

/// <summary>Fills with what is usual at the site on that day of the year, moved by what is left of the last known departure.</summary>
public sealed class SiteClimatology
{
    /// <summary>How many earlier years must know the time of the year [years]. Source: the period average of climatological practice (SEEN, secondary; science reference 5.1).</summary>
    public const int YearsNeeded = 10;

    /// <summary>How many earlier years are looked at, so that the usual follows a changing climate [years]. Source: the standard normal of 30 years (SEEN, science reference 5.1).</summary>
    public const int LatestYears = 30;

    /// <summary>How many days on each side of the day of the year count [days].</summary>
    public const int HalfWindowDays = 7;

    /// <summary>
    /// How many days in a row are filled at most [days]; a longer hole stays a hole from its next day on. By then nothing is left of the last reading, and
    /// each further day would add to a heat sum that no weather has made.
    /// </summary>
    public const int LongestHoleDays = 10;

    private const int LeastDaysOfWindow = HalfWindowDays + 1;
    private const double FadingDays = 2.1;
    private static readonly double[] ErrorsC = [3.7, 4.5, 4.7, 4.8, 4.8, 4.8, 4.8, 4.8, 4.8, 4.8];

    private readonly DateOnly firstDay;
    private readonly double[] readingsC;
    private readonly double[] sumsC;
    private readonly int[] counts;

    /// <summary>Prepares the climate of one temperature.</summary>
    /// <param name="firstDay">The day of the first reading.</param>
    /// <param name="readingsC">The readings [°C], one a day, NaN where missing. They must not change later.</param>
    public SiteClimatology(DateOnly firstDay, double[] readingsC)
    {
        ArgumentNullException.ThrowIfNull(readingsC);
        this.firstDay = firstDay;
        this.readingsC = readingsC;
        sumsC = new double[readingsC.Length + 1];
        counts = new int[readingsC.Length + 1];
        for (int i = 0; i < readingsC.Length; i++)
        {
            bool isKnown = !double.IsNaN(readingsC[i]);
            sumsC[i + 1] = sumsC[i] + (isKnown ? readingsC[i] : 0);
            counts[i + 1] = counts[i] + (isKnown ? 1 : 0);
        }
    }

    /// <summary>
    /// Gives a missing day's temperature and its standard deviation.
    /// <para>value = u(day) + (t − u(last))·exp(−k/2.1), with u what is usual (<see cref="UsualC"/>), t the last reading, k the days since it [days].</para>
    /// <para>Valid up to <see cref="LongestHoleDays"/> after the last reading. Null beyond, and where fewer than <see cref="YearsNeeded"/> earlier years are known.</para>
    /// <para>Source: daily normals by a window of 15 days (MEMORY; science reference 5.1); the fading as that of a first-order autoregression, textbook statistics (MEMORY).</para>
    /// <para>Fitted constant: the e-folding time of 2.1 days, least squares over 1 to 10 days at 40 humid stations of the US Climate Reference Network, product
    /// CRND0103 (daily), 2020 to 2023 against the years before; RMSE over those days 4.77 °C, and within 0.01 °C of that from 1.8 to 2.6 days.</para>
    /// </summary>
    /// <param name="index">The missing day's place.</param>
    /// <exception cref="ArgumentOutOfRangeException">The place lies outside the readings.</exception>
    public (double ValueC, double ErrorC)? Of(int index)
    {
        Demand.Within(index, 0, readingsC.Length - 1, "place of the day");
        int since = 1;
        while (since <= LongestHoleDays && index - since >= 0 && double.IsNaN(readingsC[index - since])) since++;
        if (since > LongestHoleDays || index - since < 0) return null;
        double usualC = UsualC(index, 0);
        double usualThenC = UsualC(index, since);
        if (double.IsNaN(usualC) || double.IsNaN(usualThenC)) return null;
        return (usualC + (readingsC[index - since] - usualThenC) * Math.Exp(-since / FadingDays), ErrorC(since));
    }

    /// <summary>
    /// What is usual so many days before a day [°C]: the mean over the latest <see cref="LatestYears"/> earlier years of the means of 15 days about it.
    /// <para>A year counts from 8 known days of the 15 on. NaN where fewer than <see cref="YearsNeeded"/> years count. 29 February goes with the 28th.</para>
    /// <para>Only years before the day's own are used, so that no later day changes it.</para>
    /// </summary>
    /// <param name="index">The day's place.</param>
    /// <param name="daysBefore">How many days before it [days], 0 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">The number of days is negative.</exception>
    public double UsualC(int index, int daysBefore = 0)
    {
        Demand.AtLeast(daysBefore, 0, "days before [days]");
        DateOnly day = firstDay.AddDays(index);
        AnnualDay annual = AnnualDay.Of(day);
        double sumC = 0;
        int years = 0;
        for (int year = day.Year - 1; year >= Math.Max(firstDay.Year - 1, day.Year - LatestYears) && year >= 1; year--)
        {
            int middle = annual.In(year).DayNumber - firstDay.DayNumber - daysBefore;
            int from = Math.Max(0, middle - HalfWindowDays);
            int until = middle + HalfWindowDays + 1;
            if (until <= from) break;
            int known = counts[until] - counts[from];
            if (known < LeastDaysOfWindow) continue;
            sumC += (sumsC[until] - sumsC[from]) / known;
            years++;
        }

        return years >= YearsNeeded ? sumC / years : double.NaN;
    }

    /// <summary>
    /// The standard deviation of a filling so many days after the last reading [°C], the same for the two temperatures and for the whole year.
    /// <para>Data: holes made at 40 humid stations of the US Climate Reference Network, product CRND0103 (daily), 2010 to 2023, by the tool filling-report of tests/GddWatch.Validation on the years 2020 to 2023,
    /// 88 640 values on the first day to 8 706 on the tenth: RMSE 3.68, 4.53, 4.71, 4.75, 4.77, 4.78, 4.79, 4.75, 4.75 and 4.82 °C; bias −0.13 on the first day, −0.32 to −0.21
    /// afterwards, since the earlier years were cooler.</para>
    /// </summary>
    /// <param name="daysSince">Days since the last reading [days], 1 to <see cref="LongestHoleDays"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">The number of days is out of its range.</exception>
    public static double ErrorC(int daysSince) => ErrorsC[(int)Demand.Within(daysSince, 1, LongestHoleDays, "days since the last reading [days]") - 1];
}
