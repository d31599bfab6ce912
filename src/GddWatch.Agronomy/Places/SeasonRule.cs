using GddWatch.Agronomy.Quantities;

namespace GddWatch.Agronomy.Places;

/// <summary>
/// The part of each year in which a treatment's window is looked for, written for the northern hemisphere. At a southern site both ends move by half
/// a year. A season that ends before it begins crosses the turn of the year.
/// </summary>
/// <param name="From">The first day in the north.</param>
/// <param name="Until">The last day in the north, included.</param>
public sealed record SeasonRule(AnnualDay From, AnnualDay Until)
{
    /// <summary>The season that begins in a year at a site of that hemisphere.</summary>
    public Season BeginningIn(int year, Hemisphere hemisphere)
    {
        DateOnly first = hemisphere.Place(From).In(year);
        DateOnly last = hemisphere.Place(Until).In(year);
        if (last < first) last = hemisphere.Place(Until).In(year + 1);
        return new Season(year, new DateSpan(first, last));
    }

    /// <summary>The season that a day lies in, or else the next one to begin.</summary>
    public Season AtOrAfter(DateOnly day, Hemisphere hemisphere)
    {
        Season season = BeginningIn(day.Year - 1, hemisphere);
        while (season.Span.Last < day) season = BeginningIn(season.Year + 1, hemisphere);
        return season;
    }
}
