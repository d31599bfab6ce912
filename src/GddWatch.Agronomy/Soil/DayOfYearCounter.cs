namespace GddWatch.Agronomy.Soil;

/// <summary>Counts days of the year along a series, without reckoning each date.</summary>
internal struct DayOfYearCounter(DateOnly firstDay)
{
    private int year = firstDay.Year;
    private int daysInYear = DateTime.IsLeapYear(firstDay.Year) ? 366 : 365;

    /// <summary>The day of the year, from 1.</summary>
    public int DayOfYear { readonly get; private set; } = firstDay.DayOfYear;

    public void Next()
    {
        if (++DayOfYear <= daysInYear) return;
        DayOfYear = 1;
        year++;
        daysInYear = year <= DateOnly.MaxValue.Year && DateTime.IsLeapYear(year) ? 366 : 365;
    }
}
