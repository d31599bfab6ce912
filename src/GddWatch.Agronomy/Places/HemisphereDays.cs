using GddWatch.Agronomy.Quantities;

namespace GddWatch.Agronomy.Places;

/// <summary>Puts days that are written for the north into a hemisphere's own year.</summary>
public static class HemisphereDays
{
    /// <summary>The day itself in the north, the day half a year on in the south.</summary>
    public static AnnualDay Place(this Hemisphere hemisphere, AnnualDay northern) =>
        hemisphere == Hemisphere.Southern ? northern.HalfAYearOn() : northern;
}
