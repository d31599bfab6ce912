namespace GddWatch.Agronomy.Weather.Checks;

/// <summary>
/// What earlier calendar years show of a site's climate, from values that nobody doubts. A year joins on 2 January after it, when it is known what 1 January
/// says about its last day; a doubt that comes later does not take a value out again.
/// </summary>
internal sealed class EarlierYears
{
    /// <summary>How many earlier years a judgement needs [years].</summary>
    public const int LeastYears = 10;

    /// <summary>How many days before and after a place in the year tell what is usual there [days].</summary>
    public const int HalfWindowDays = 7;

    /// <summary>A leap year, so that 29 February has its place in a year.</summary>
    public const int LeapYear = 2024;

    /// <summary>The days of a leap year, so that 29 February has its own place [days].</summary>
    public const int DaysOfAYear = 366;

    // A month of a year counts towards the ten where half of it is known.
    private const int LeastDaysOfAMonth = 15;

    private readonly CheckedValues values;
    private MonthRecord[] months;
    private DaysOfEarlierYears[] days;

    // Whether another walk looks at the same years: they are copied before one more joins.
    private bool isShared;

    public EarlierYears(CheckedValues values)
    {
        this.values = values;
        months = [.. Enumerable.Range(0, 24).Select(_ => new MonthRecord())];
        days = [new(HalfWindowDays), new(HalfWindowDays)];
    }

    /// <summary>The same years, to go on over other days.</summary>
    public EarlierYears(EarlierYears before, CheckedValues values)
    {
        this.values = values;
        (months, days, Version) = (before.months, before.days, before.Version);
        before.isShared = isShared = true;
    }

    /// <summary>How often a year has joined; grows when anything may have changed.</summary>
    public int Version { get; private set; }

    /// <summary>The place of a day in a leap year, from 0.</summary>
    public static int PlaceOf(DateOnly day) => new DateOnly(LeapYear, day.Month, day.Day).DayOfYear - 1;

    public MonthRecord Month(WeatherVariable variable, int month) => months[((int)variable * 12) + month - 1];

    /// <summary>The values about each place in the year.</summary>
    public DaysOfEarlierYears Days(WeatherVariable variable) => days[(int)variable];

    /// <summary>Takes in the year before, where today is the day for it.</summary>
    public void Advance(int today)
    {
        if (values.PlaceAt(today) != 1) return;
        Version++;
        if (isShared)
        {
            months = [.. months.Select(month => month.Copy())];
            days = [.. days.Select(each => each.Copy())];
            isShared = false;
        }

        foreach (WeatherVariable variable in CheckedValues.Variables) Join(variable, values.DayAt(today).Year - 1);
    }

    private void Join(WeatherVariable variable, int year)
    {
        double[] yearC = new double[DaysOfAYear];
        Array.Fill(yearC, double.NaN);
        List<double> known = new(31);
        for (DateOnly month = new(year, 1, 1); month.Year == year; month = month.AddMonths(1))
        {
            known.Clear();
            int from = values.IndexOf(month);
            int place = PlaceOf(month);
            for (int i = 0; i < DateTime.DaysInMonth(year, month.Month); i++)
            {
                double valueC = values.Undoubted(variable, from + i);
                if (double.IsNaN(valueC)) continue;
                known.Add(valueC);
                yearC[place + i] = valueC;
            }

            Month(variable, month.Month).Join(known, known.Count >= LeastDaysOfAMonth);
        }

        Days(variable).Join(yearC);
    }
}
