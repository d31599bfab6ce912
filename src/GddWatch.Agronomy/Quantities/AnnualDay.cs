using System.Globalization;

namespace GddWatch.Agronomy.Quantities;

/// <summary>
/// A day that comes every year, by month and day. 29 February falls on 28 February in a year that has none.
/// There is no meaningful default: the default value is month 0, and using it throws.
/// </summary>
public readonly record struct AnnualDay
{
    /// <summary>
    /// How far a southern site's year runs behind a northern one's [days]: 1 January becomes 1 July.
    /// </summary>
    public const int HalfYearDays = 181;

    private const int LeapYear = 2024;
    private const int CommonYear = 2023;

    private AnnualDay(int month, int day)
    {
        Month = month;
        Day = day;
    }

    /// <summary>The month, 1 to 12.</summary>
    public int Month { get; }

    /// <summary>The day of the month, from 1.</summary>
    public int Day { get; }

    /// <summary>A day of the year from its month and its day.</summary>
    /// <exception cref="ArgumentOutOfRangeException">No year has such a day.</exception>
    public static AnnualDay Of(int month, int day)
    {
        Demand.Within(month, 1, 12, "month");
        Demand.Within(day, 1, DateTime.DaysInMonth(LeapYear, month), $"day of month {month}");
        return new AnnualDay(month, day);
    }

    /// <summary>The day of the year on which a date falls.</summary>
    public static AnnualDay Of(DateOnly date) => new(date.Month, date.Day);

    /// <summary>The date of this day in a year; 29 February is taken as 28 February where the year has none.</summary>
    public DateOnly In(int year) => new(year, Month, Math.Min(Day, DateTime.DaysInMonth(year, Month)));

    /// <summary>
    /// The day half a year on, which has the same place in a southern site's year: <see cref="HalfYearDays"/> days later, counted in a year of
    /// 365 days, so that every day moves by the same number of days.
    /// </summary>
    public AnnualDay HalfAYearOn() => Of(In(CommonYear).AddDays(HalfYearDays));

    /// <summary>Month and day as in "04-12".</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Month:00}-{Day:00}");
}
