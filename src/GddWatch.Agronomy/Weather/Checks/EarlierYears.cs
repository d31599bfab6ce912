using System.Runtime.InteropServices;

namespace GddWatch.Agronomy.Weather.Checks;

/// <summary>
/// What earlier calendar years show of a site's climate, from values that nobody doubts. A year joins on 2 January after it, when it is known what 1 January
/// says about its last day; a doubt that comes later does not take a value out again.
/// </summary>
internal sealed class EarlierYears(CheckedValues values)
{
    /// <summary>How many earlier years a judgement needs [years].</summary>
    public const int LeastYears = 10;

    // A month of a year counts towards the ten where half of it is known.
    private const int LeastDaysOfAMonth = 15;
    private const int LeapYear = 2024;

    private readonly MonthRecord[] months = [.. Enumerable.Range(0, 24).Select(_ => new MonthRecord())];
    private readonly List<double>[] days = [.. Enumerable.Range(0, 2 * DaysOfAYear).Select(_ => new List<double>())];

    /// <summary>The days of a leap year, so that 29 February has its own place [days].</summary>
    public const int DaysOfAYear = 366;

    /// <summary>How often a year has joined; grows when anything may have changed.</summary>
    public int Version { get; private set; }

    /// <summary>The place of a day in a leap year, from 0.</summary>
    public static int PlaceOf(DateOnly day) => new DateOnly(LeapYear, day.Month, day.Day).DayOfYear - 1;

    public MonthRecord Month(WeatherVariable variable, int month) => months[((int)variable * 12) + month - 1];

    /// <summary>The values of a place in the year, at most one a year, from cold to warm [°C]; the place goes around the year's ends.</summary>
    public ReadOnlySpan<double> SortedDay(WeatherVariable variable, int place) => CollectionsMarshal.AsSpan(Day(variable, place));

    /// <summary>Takes in the year before, where today is the day for it.</summary>
    public void Advance(int today)
    {
        DateOnly day = values.DayAt(today);
        if (day.Month != 1 || day.Day != 2) return;
        Version++;
        foreach (WeatherVariable variable in CheckedValues.Variables)
        {
            for (int month = 1; month <= 12; month++) Join(variable, new DateOnly(day.Year - 1, month, 1));
        }
    }

    private void Join(WeatherVariable variable, DateOnly month)
    {
        List<double> known = [];
        int from = values.IndexOf(month);
        int place = PlaceOf(month);
        int length = DateTime.DaysInMonth(month.Year, month.Month);
        for (int i = 0; i < length; i++)
        {
            double valueC = values.Undoubted(variable, from + i);
            if (double.IsNaN(valueC)) continue;
            known.Add(valueC);
            Insert(Day(variable, place + i), valueC);
        }

        Month(variable, month.Month).Join(known, known.Count >= LeastDaysOfAMonth);
    }

    private List<double> Day(WeatherVariable variable, int place) => days[((int)variable * DaysOfAYear) + ((place + DaysOfAYear) % DaysOfAYear)];

    private static void Insert(List<double> sorted, double value)
    {
        int place = sorted.Count;
        while (place > 0 && sorted[place - 1] > value) place--;
        sorted.Insert(place, value);
    }
}
