namespace GddWatch.Feeds.Archives.Ghcn;

/// <summary>One value of the archive with its flags, as it stands in a file. A flag that is not there is a blank.</summary>
internal readonly record struct GhcnValue(DateOnly Day, GhcnElement Element, int Value, char Measurement, char Quality, char Source, int? ObservedAt, int Line)
{
    private const int Noon = 1200;
    private const int OneInTheMorning = 100;

    /// <summary>Whether the value was read in the morning. Midnight is written 2400 and sometimes 0000, so that the first hour tells nothing.</summary>
    public bool IsOfTheMorning => ObservedAt is >= OneInTheMorning and <= Noon;

    /// <summary>Reads the text of a flag: one character, or none.</summary>
    public static bool TryFlag(ReadOnlySpan<byte> text, out char flag)
    {
        flag = text.IsEmpty ? ' ' : (char)text[0];
        return text.Length <= 1;
    }

    /// <summary>Reads a time of observation: four digits, or nothing. One that is no time of day is taken as not told.</summary>
    public static int? Time(ReadOnlySpan<byte> text) =>
        text.Length is > 0 and <= 4 && int.TryParse(text, out int time) ? Time(time) : null;

    /// <summary>A time of observation as a number of four digits; null where it is no time of day.</summary>
    public static int? Time(int time) => time is >= 0 and <= 2400 && time % 100 < 60 ? time : null;
}
