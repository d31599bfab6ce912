namespace GddWatch.Feeds.Archives.Ghcn;

/// <summary>
/// One value of the archive with its flags, as it stands in a file, in as little room as it needs: they are gathered by the million. A flag that is not there is a blank.
/// </summary>
/// <param name="day">The day that the line names.</param>
/// <param name="element">The element.</param>
/// <param name="value">The value in the archive's own unit.</param>
/// <param name="measurement">The measurement flag.</param>
/// <param name="quality">The quality flag.</param>
/// <param name="source">The source flag.</param>
/// <param name="readAt">When it was read.</param>
/// <param name="line">The line, from 1.</param>
internal readonly struct GhcnValue(DateOnly day, GhcnElement element, int value, char measurement, char quality, char source, TimeOfReading readAt, int line)
{
    private const int Noon = 1200;
    private const int OneInTheMorning = 100;
    private const int MeasurementAt = 24;
    private const int QualityAt = MeasurementAt + 8;
    private const int SourceAt = QualityAt + 8;
    private const int ElementAt = SourceAt + 8;
    private const int TimeAt = ElementAt + 8;

    // Two numbers, so that a value is written at once: where it goes is often far away, and each part would wait for itself.
    private readonly ulong lineAndValue = (uint)line | ((ulong)(uint)value << 32);
    private readonly ulong others = (uint)day.DayNumber | ((ulong)(byte)measurement << MeasurementAt) | ((ulong)(byte)quality << QualityAt)
        | ((ulong)(byte)source << SourceAt) | ((ulong)element << ElementAt) | ((ulong)readAt << TimeAt);

    /// <summary>The day that the line names.</summary>
    public DateOnly Day => DateOnly.FromDayNumber(DayNumber);

    /// <summary>The number of that day, counted as <see cref="DateOnly.DayNumber"/> does.</summary>
    public int DayNumber => (int)others & ((1 << MeasurementAt) - 1);

    /// <summary>The value in the archive's own unit.</summary>
    public int Value => (int)(lineAndValue >> 32);

    /// <summary>The line, from 1.</summary>
    public int Line => (int)lineAndValue;

    /// <summary>The measurement flag.</summary>
    public char Measurement => (char)(byte)(others >> MeasurementAt);

    /// <summary>The quality flag.</summary>
    public char Quality => (char)(byte)(others >> QualityAt);

    /// <summary>The source flag.</summary>
    public char Source => (char)(byte)(others >> SourceAt);

    /// <summary>The element.</summary>
    public GhcnElement Element => (GhcnElement)(byte)(others >> ElementAt);

    /// <summary>When it was read.</summary>
    public TimeOfReading ReadAt => (TimeOfReading)(byte)(others >> TimeAt);

    /// <summary>Reads the text of a flag: one character, or none.</summary>
    public static bool TryFlag(ReadOnlySpan<byte> text, out char flag)
    {
        flag = text.IsEmpty ? ' ' : (char)text[0];
        return text.Length <= 1;
    }

    /// <summary>Reads a time of observation: four digits, or nothing. One that is no time of day is taken as not told.</summary>
    public static TimeOfReading Time(ReadOnlySpan<byte> text) =>
        text.Length is > 0 and <= 4 && int.TryParse(text, out int time) ? Time(time) : TimeOfReading.NotTold;

    /// <summary>A time of observation as a number of four digits. Midnight is written 2400 and sometimes 0000, so that the first hour tells nothing.</summary>
    public static TimeOfReading Time(int time)
    {
        if (time is < 0 or > 2400 || time % 100 >= 60) return TimeOfReading.NotTold;
        return time is >= OneInTheMorning and <= Noon ? TimeOfReading.Morning : TimeOfReading.Later;
    }
}
