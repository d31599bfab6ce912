namespace GddWatch.Feeds.Reading;

/// <summary>What a row of daily weather can be.</summary>
internal static class RowLimits
{
    /// <summary>The longest line that is looked at; the widest archive has a few hundred bytes a day.</summary>
    public const int LongestLineBytes = 16_384;

    /// <summary>Daily temperatures have been kept since the 18th century (common practice).</summary>
    public static readonly DateOnly EarliestDay = new(1700, 1, 1);
}
