namespace GddWatch.Agronomy.Weather.Checks;

/// <summary>
/// A series' measured minima and maxima with the doubts that are held at the moment, while the days are walked through. A value that was filled or
/// forecast is no measurement and counts as missing.
/// </summary>
internal sealed class CheckedValues
{
    // The place of 29 February.
    private const int LeapDay = 59;

    private static readonly byte[] MonthOfPlace = [.. Enumerable.Range(0, EarlierYears.DaysOfAYear).Select(place => (byte)new DateOnly(EarlierYears.LeapYear, 1, 1).AddDays(place).Month)];

    private readonly DateOnly firstDay;
    private readonly int days;
    private readonly double[][] values;
    private readonly ushort[][] held;
    private readonly short[] places;
    private readonly List<Doubt> doubts = [];

    public CheckedValues(DailySeries series)
    {
        (firstDay, days) = (series.FirstDay, series.Count);
        values = [Measured(series.MinimumAirC, series.MinimumMarks), Measured(series.MaximumAirC, series.MaximumMarks)];
        held = [new ushort[days], new ushort[days]];
        places = Places(firstDay, days);
    }

    /// <summary>The doubts that are held, over days that are the same as far as they were judged.</summary>
    public CheckedValues(CheckedValues before, DailySeries series)
        : this(series)
    {
        for (int i = 0; i < held.Length; i++) before.held[i].AsSpan(0, Math.Min(before.held[i].Length, days)).CopyTo(held[i]);
        doubts.AddRange(before.doubts);
        Changes = before.Changes;
    }

    /// <summary>The doubts that are held on the first so many days, without any value.</summary>
    public CheckedValues(CheckedValues before, int judgedDays)
    {
        firstDay = before.firstDay;
        values = [[], []];
        held = [.. before.held.Select(each => each[..judgedDays])];
        places = [];
        doubts.AddRange(before.doubts);
        Changes = before.Changes;
    }

    /// <summary>The variables that are checked.</summary>
    public static ReadOnlySpan<WeatherVariable> Variables => [WeatherVariable.MinimumAirC, WeatherVariable.MaximumAirC];

    public IReadOnlyList<Doubt> Doubts => doubts;

    /// <summary>How often a doubt came or went: while it stays, what was found out about the days before still holds.</summary>
    public int Changes { get; private set; }

    public DateOnly DayAt(int index) => firstDay.AddDays(index);

    /// <summary>The place of a day in a leap year, from 0.</summary>
    public int PlaceAt(int index) => places[index];

    /// <summary>The month of a day, 1 to 12.</summary>
    public int MonthAt(int index) => MonthOfPlace[places[index]];

    public int IndexOf(DateOnly day) => day.DayNumber - firstDay.DayNumber;

    /// <summary>A value as measured, whatever is doubted; NaN where there is none.</summary>
    public double Measured(WeatherVariable variable, int index) => (uint)index < (uint)days ? values[(int)variable][index] : double.NaN;

    /// <summary>A value as a check sees it: NaN where an earlier check of the order doubts it.</summary>
    public double SeenBy(QualityCheck check, WeatherVariable variable, int index) => Where(variable, index, (1 << (int)check) - 1);

    /// <summary>A value that neither an earlier check nor this one doubts; else NaN.</summary>
    public double PassedBy(QualityCheck check, WeatherVariable variable, int index) => Where(variable, index, (2 << (int)check) - 1);

    /// <summary>A value that nobody doubts; else NaN.</summary>
    public double Undoubted(WeatherVariable variable, int index) => Where(variable, index, ushort.MaxValue);

    public bool IsDoubted(QualityCheck check, WeatherVariable variable, int index) =>
        (uint)index < (uint)days && (held[(int)variable][index] & (1 << (int)check)) != 0;

    /// <summary>Doubts a value from today on, if it is measured and this check does not doubt it yet.</summary>
    public void Doubt(QualityCheck check, WeatherVariable variable, int index, int today, string why)
    {
        double value = Measured(variable, index);
        if (double.IsNaN(value) || IsDoubted(check, variable, index)) return;
        held[(int)variable][index] |= (ushort)(1 << (int)check);
        Changes++;
        doubts.Add(new Doubt(DayAt(index), variable, value, check, DayAt(today), null, why));
    }

    /// <summary>Ends a doubt today.</summary>
    public void Clear(QualityCheck check, WeatherVariable variable, int index, int today)
    {
        held[(int)variable][index] &= (ushort)~(1 << (int)check);
        Changes++;
        DateOnly day = DayAt(index);
        int place = doubts.FindLastIndex(doubt => doubt.Day == day && doubt.Variable == variable && doubt.Check == check);
        doubts[place] = doubts[place] with { ClearedOn = DayAt(today) };
    }

    private static short[] Places(DateOnly firstDay, int days)
    {
        short[] inYear = new short[days];
        int place = EarlierYears.PlaceOf(firstDay);
        for (int i = 0; i < inYear.Length; i++)
        {
            inYear[i] = (short)place;
            if (++place == LeapDay && !DateTime.IsLeapYear(firstDay.AddDays(i).Year)) place++;
            if (place == EarlierYears.DaysOfAYear) place = 0;
        }

        return inYear;
    }

    private double Where(WeatherVariable variable, int index, int mask) =>
        (uint)index < (uint)days && (held[(int)variable][index] & mask) == 0 ? values[(int)variable][index] : double.NaN;

    private static double[] Measured(ReadOnlySpan<double> column, ReadOnlySpan<Mark> marks)
    {
        double[] measured = column.ToArray();
        for (int i = 0; i < measured.Length; i++)
        {
            if (marks[i] is Mark.Filled or Mark.Forecast || !double.IsFinite(measured[i])) measured[i] = double.NaN;
        }

        return measured;
    }
}
