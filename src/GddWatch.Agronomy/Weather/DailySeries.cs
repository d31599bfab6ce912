using System.Runtime.InteropServices;

namespace GddWatch.Agronomy.Weather;

/// <summary>
/// A site's consecutive days as columns: one array a variable, one calendar index. NaN stands for a value that is not known. Its calendar has no gaps;
/// it cannot be changed from outside.
/// </summary>
public sealed class DailySeries
{
    private readonly double[]?[] columns;
    private readonly Mark[] minimumMarks;
    private readonly Mark[] maximumMarks;

    internal DailySeries(DateOnly firstDay, int count, double[]?[] columns, Mark[] minimumMarks, Mark[] maximumMarks)
    {
        FirstDay = firstDay;
        Count = count;
        this.columns = columns;
        this.minimumMarks = minimumMarks;
        this.maximumMarks = maximumMarks;
    }

    /// <summary>The first day.</summary>
    public DateOnly FirstDay { get; }

    /// <summary>How many days [days]; at least one.</summary>
    public int Count { get; }

    /// <summary>The last day, included.</summary>
    public DateOnly LastDay => FirstDay.AddDays(Count - 1);

    /// <summary>Lowest air temperature of each day [°C].</summary>
    public ReadOnlySpan<double> MinimumAirC => Column(WeatherVariable.MinimumAirC);

    /// <summary>Highest air temperature of each day [°C].</summary>
    public ReadOnlySpan<double> MaximumAirC => Column(WeatherVariable.MaximumAirC);

    /// <summary>The mark of each day's minimum.</summary>
    public ReadOnlySpan<Mark> MinimumMarks => minimumMarks.AsSpan(0, Count);

    /// <summary>The mark of each day's maximum.</summary>
    public ReadOnlySpan<Mark> MaximumMarks => maximumMarks.AsSpan(0, Count);

    /// <summary>Whether any day of the series knows the variable.</summary>
    public bool Has(WeatherVariable variable) => columns[(int)variable] is not null;

    /// <summary>A variable's value on each day, NaN where it is not known; empty where no day knows it.</summary>
    public ReadOnlySpan<double> Column(WeatherVariable variable) =>
        columns[(int)variable] is { } column ? column.AsSpan(0, Count) : [];

    /// <summary>The place of a day in the columns; outside 0 to <see cref="Count"/> − 1 where the series does not hold the day.</summary>
    public int IndexOf(DateOnly day) => day.DayNumber - FirstDay.DayNumber;

    /// <summary>The day at a place in the columns.</summary>
    public DateOnly DayAt(int index) => FirstDay.AddDays(index);

    /// <summary>Whether the series holds the day.</summary>
    public bool Holds(DateOnly day) => (uint)IndexOf(day) < (uint)Count;

    /// <summary>
    /// The series as it stood on a day: later days are not in it. Null where the series begins only after that day. Shares the columns, copies nothing.
    /// </summary>
    public DailySeries? Until(DateOnly day)
    {
        if (day < FirstDay) return null;
        return day >= LastDay ? this : new DailySeries(FirstDay, IndexOf(day) + 1, columns, minimumMarks, maximumMarks);
    }

    /// <summary>The days from a day on, copied.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The series does not hold the day.</exception>
    public DailySeries From(DateOnly day)
    {
        if (!Holds(day)) throw new ArgumentOutOfRangeException(nameof(day), day, $"{nameof(day)} was {day:yyyy-MM-dd}; allowed is {FirstDay:yyyy-MM-dd} to {LastDay:yyyy-MM-dd}.");
        int first = IndexOf(day);
        return new DailySeries(
            day, Count - first, [.. columns.Select(column => column?[first..Count])], minimumMarks[first..Count], maximumMarks[first..Count]);
    }

    /// <summary>
    /// The first day on which another series says something else of some variables, or of a mark of theirs: the earlier of their first days where the two begin on different ones, and the day after the shorter one where
    /// they are the same all along. A value that is not known in either is the same.
    /// </summary>
    public DateOnly FirstDifference(DailySeries other, ReadOnlySpan<WeatherVariable> variables)
    {
        ArgumentNullException.ThrowIfNull(other);
        if (other.FirstDay != FirstDay) return other.FirstDay < FirstDay ? other.FirstDay : FirstDay;
        int same = Math.Min(Count, other.Count);
        foreach (WeatherVariable variable in variables)
        {
            if (Has(variable) || other.Has(variable)) same = Math.Min(same, Bits(Column(variable)).CommonPrefixLength(Bits(other.Column(variable))));
            if (variable == WeatherVariable.MinimumAirC) same = Math.Min(same, MinimumMarks.CommonPrefixLength(other.MinimumMarks));
            if (variable == WeatherVariable.MaximumAirC) same = Math.Min(same, MaximumMarks.CommonPrefixLength(other.MaximumMarks));
        }

        return FirstDay.AddDays(same);
    }

    // Bit by bit, so that what is not known equals itself.
    private static ReadOnlySpan<long> Bits(ReadOnlySpan<double> column) => MemoryMarshal.Cast<double, long>(column);

    /// <summary>The mark of one value; variables other than the two air temperatures carry none and count as measured.</summary>
    public Mark MarkAt(WeatherVariable variable, int index) => variable switch
    {
        WeatherVariable.MinimumAirC => MinimumMarks[index],
        WeatherVariable.MaximumAirC => MaximumMarks[index],
        _ => Mark.Measured,
    };

    /// <summary>Whether a value of the variable has another mark than that it was measured.</summary>
    internal bool HasMarks(WeatherVariable variable) => variable switch
    {
        WeatherVariable.MinimumAirC => MinimumMarks.ContainsAnyExcept(Mark.Measured),
        WeatherVariable.MaximumAirC => MaximumMarks.ContainsAnyExcept(Mark.Measured),
        _ => false,
    };

    /// <summary>The worse of the marks of the day's two temperatures, or null where one of them is missing.</summary>
    public Mark? QualityAt(int index)
    {
        if (double.IsNaN(MinimumAirC[index]) || double.IsNaN(MaximumAirC[index])) return null;
        return minimumMarks[index] > maximumMarks[index] ? minimumMarks[index] : maximumMarks[index];
    }

    /// <summary>The same series with its two temperature columns and their marks replaced, as a filling does.</summary>
    /// <exception cref="ArgumentException">A column has another length than the series.</exception>
    public DailySeries WithAirTemperature(double[] minimumC, double[] maximumC, Mark[] minimumMarks, Mark[] maximumMarks)
    {
        ArgumentNullException.ThrowIfNull(minimumC);
        ArgumentNullException.ThrowIfNull(maximumC);
        ArgumentNullException.ThrowIfNull(minimumMarks);
        ArgumentNullException.ThrowIfNull(maximumMarks);
        if (minimumC.Length != Count || maximumC.Length != Count || minimumMarks.Length != Count || maximumMarks.Length != Count)
        {
            throw new ArgumentException($"Each column must have {Count} days, as the series has.", nameof(minimumC));
        }

        double[]?[] replaced = [.. columns];
        replaced[(int)WeatherVariable.MinimumAirC] = minimumC;
        replaced[(int)WeatherVariable.MaximumAirC] = maximumC;
        return new DailySeries(FirstDay, Count, replaced, minimumMarks, maximumMarks);
    }
}
