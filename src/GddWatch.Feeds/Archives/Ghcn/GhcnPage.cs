using System.Runtime.CompilerServices;

namespace GddWatch.Feeds.Archives.Ghcn;

/// <summary>
/// Some days of a station that follow each other. The values of one station come from days close to each other, and a spoiled date must cost a page, not all the years
/// before it.
/// </summary>
internal sealed class GhcnPage
{
    /// <summary>How many days a page has.</summary>
    public const int Days = 1 << DaysAsPower;

    /// <summary>That number as a power of two.</summary>
    public const int DaysAsPower = 8;

    private static readonly GhcnDay Nothing = GhcnDay.Nothing();

    private DaysOfPage days;

    /// <summary>A page of days of which nothing is known.</summary>
    public GhcnPage(int number)
    {
        Number = number;
        All.Fill(Nothing);
    }

    /// <summary>Which page: its first day has this number times <see cref="Days"/>.</summary>
    public int Number { get; }

    /// <summary>The days.</summary>
    public Span<GhcnDay> All => days;

    /// <summary>The number of a day, counted as <see cref="DateOnly.DayNumber"/> does.</summary>
    public int DayNumberAt(int place) => (Number * Days) + place;

    [InlineArray(Days)]
    private struct DaysOfPage
    {
        private GhcnDay first;
    }
}
