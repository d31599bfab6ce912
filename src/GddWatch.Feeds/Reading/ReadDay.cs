using GddWatch.Agronomy.Weather;

namespace GddWatch.Feeds.Reading;

/// <summary>One row of a file, with its place in it. NaN stands for what the row does not know.</summary>
internal sealed class ReadDay(DateOnly day, string file, int line)
{
    public static readonly int VariableCount = Enum.GetValues<WeatherVariable>().Length;

    private readonly double[] values = NewValues();

    public DateOnly Day { get; } = day;

    public string File { get; } = file;

    public int Line { get; } = line;

    /// <summary>False where the row is left out: its day still counts as mentioned, and its temperatures still tell the unit.</summary>
    public bool IsUsable { get; set; } = true;

    /// <summary>Whether the row's maximum was read in the morning, so that it is of the day before.</summary>
    public bool MaximumIsOfTheDayBefore { get; set; }

    /// <summary>Whether the row knows nothing but its day.</summary>
    public bool IsBlank => Array.TrueForAll(values, double.IsNaN);

    public double this[WeatherVariable variable]
    {
        get => values[(int)variable];
        set => values[(int)variable] = value;
    }

    public bool HasSameValuesAs(ReadDay other) => values.AsSpan().SequenceEqual(other.values);

    private static double[] NewValues()
    {
        var unknown = new double[VariableCount];
        Array.Fill(unknown, double.NaN);
        return unknown;
    }
}
