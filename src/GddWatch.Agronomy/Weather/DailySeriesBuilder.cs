namespace GddWatch.Agronomy.Weather;

/// <summary>Collects days in any order into a <see cref="DailySeries"/>. The first value given for a day and variable stands.</summary>
public sealed class DailySeriesBuilder
{
    private static readonly int VariableCount = Enum.GetValues<WeatherVariable>().Length;

    private readonly double[]?[] columns = new double[VariableCount][];
    // Nearly every value is measured: the others are few.
    private readonly Dictionary<(int DayNumber, WeatherVariable Variable), Mark> marks = [];
    private int firstDayNumber;
    private int capacity;
    private int lowest = int.MaxValue;
    private int highest = int.MinValue;

    /// <summary>For days of which nothing is known beforehand.</summary>
    public DailySeriesBuilder()
    {
    }

    /// <summary>For days from a first to a last one: their columns are made once, of the right length. Others may still be given.</summary>
    public DailySeriesBuilder(DateOnly firstDay, DateOnly lastDay)
    {
        firstDayNumber = firstDay.DayNumber;
        capacity = Math.Max(lastDay.DayNumber - firstDayNumber + 1, 1);
    }

    /// <summary>Whether no day has been given yet.</summary>
    public bool IsEmpty => highest < lowest;

    /// <summary>Puts in every value that the record knows.</summary>
    public void Add(DailyRecord record)
    {
        ArgumentNullException.ThrowIfNull(record);
        Reach(record.Day.DayNumber);
        for (int variable = 0; variable < VariableCount; variable++)
        {
            if (record[(WeatherVariable)variable] is { } value) Put(record.Day, (WeatherVariable)variable, value);
        }
    }

    /// <summary>Puts in one value. A day given without any value still belongs to the series.</summary>
    public void Put(DateOnly day, WeatherVariable variable, double value) => Put(day, variable, value, Mark.Measured);

    /// <summary>Puts in one value with its mark, which is kept for the two air temperatures.</summary>
    public void Put(DateOnly day, WeatherVariable variable, double value, Mark mark)
    {
        Reach(day.DayNumber);
        double[] column = columns[(int)variable] ??= NewColumn(capacity);
        ref double place = ref column[day.DayNumber - firstDayNumber];
        if (!double.IsNaN(place)) return;
        place = value;
        if (mark != Mark.Measured && variable is (WeatherVariable.MinimumAirC or WeatherVariable.MaximumAirC)) marks[(day.DayNumber, variable)] = mark;
    }

    /// <summary>Puts in values of days that follow each other, NaN where a day's is not known. Days at either end that know none do not count as given.</summary>
    public void Put(DateOnly firstDay, WeatherVariable variable, ReadOnlySpan<double> values)
    {
        int from = 0;
        while (from < values.Length && double.IsNaN(values[from])) from++;
        int until = values.Length;
        while (until > from && double.IsNaN(values[until - 1])) until--;
        if (from == until) return;
        Reach(firstDay.DayNumber + from);
        Reach(firstDay.DayNumber + until - 1);
        double[] column = columns[(int)variable] ??= NewColumn(capacity);
        Span<double> places = column.AsSpan(firstDay.DayNumber + from - firstDayNumber, until - from);
        ReadOnlySpan<double> given = values[from..until];
        for (int i = 0; i < places.Length; i++)
        {
            if (double.IsNaN(places[i])) places[i] = given[i];
        }
    }

    /// <summary>Puts in every value of another series that is not known here yet: the rung of a second feed.</summary>
    public void AddMissingFrom(DailySeries other)
    {
        ArgumentNullException.ThrowIfNull(other);
        for (int variable = 0; variable < VariableCount; variable++)
        {
            ReadOnlySpan<double> column = other.Column((WeatherVariable)variable);
            if (!other.HasMarks((WeatherVariable)variable))
            {
                Put(other.FirstDay, (WeatherVariable)variable, column);
                continue;
            }

            for (int i = 0; i < column.Length; i++)
            {
                if (!double.IsNaN(column[i])) Put(other.DayAt(i), (WeatherVariable)variable, column[i], other.MarkAt((WeatherVariable)variable, i));
            }
        }
    }

    /// <summary>The series from the first to the last day given, or null where none was given. The builder is empty afterwards.</summary>
    public DailySeries? Build()
    {
        if (IsEmpty) return null;
        int count = highest - lowest + 1;
        var packed = new double[]?[VariableCount];
        for (int variable = 0; variable < VariableCount; variable++)
        {
            bool needed = variable is (int)WeatherVariable.MinimumAirC or (int)WeatherVariable.MaximumAirC;
            packed[variable] = columns[variable] is { } column
                ? Packed(column, count)
                : needed ? NewColumn(count) : null;
        }

        Mark[] minimumMarks = new Mark[count], maximumMarks = new Mark[count];
        foreach (((int dayNumber, WeatherVariable variable), Mark mark) in marks) (variable == WeatherVariable.MinimumAirC ? minimumMarks : maximumMarks)[dayNumber - lowest] = mark;
        DailySeries series = new(DateOnly.FromDayNumber(lowest), count, packed, minimumMarks, maximumMarks);
        Array.Clear(columns);
        marks.Clear();
        (lowest, highest, capacity) = (int.MaxValue, int.MinValue, 0);
        return series;
    }

    private double[] Packed(double[] column, int count) => column.Length == count ? column : column.AsSpan(lowest - firstDayNumber, count).ToArray();

    private void Reach(int dayNumber)
    {
        if (capacity == 0)
        {
            capacity = 512;
            firstDayNumber = dayNumber - capacity / 2;
        }

        if (dayNumber < firstDayNumber || dayNumber >= firstDayNumber + capacity) Grow(dayNumber);
        lowest = Math.Min(lowest, dayNumber);
        highest = Math.Max(highest, dayNumber);
    }

    private void Grow(int dayNumber)
    {
        int from = Math.Min(dayNumber, IsEmpty ? dayNumber : lowest);
        int until = Math.Max(dayNumber, IsEmpty ? dayNumber : highest);
        int newCapacity = Math.Max(capacity * 2, (until - from + 1) * 2);
        int newFirst = from - (newCapacity - (until - from + 1)) / 2;
        for (int variable = 0; variable < VariableCount; variable++)
        {
            if (columns[variable] is not { } old) continue;
            double[] grown = NewColumn(newCapacity);
            if (!IsEmpty) old.AsSpan(lowest - firstDayNumber, highest - lowest + 1).CopyTo(grown.AsSpan(lowest - newFirst));
            columns[variable] = grown;
        }

        firstDayNumber = newFirst;
        capacity = newCapacity;
    }

    private static double[] NewColumn(int length)
    {
        var column = new double[length];
        Array.Fill(column, double.NaN);
        return column;
    }
}
