using GddWatch.Agronomy.Quantities;

namespace GddWatch.Agronomy.Places;

/// <summary>One season of a treatment at a site.</summary>
/// <param name="Year">The year in which it begins; the season is called by it.</param>
/// <param name="Span">Its days.</param>
public readonly record struct Season(int Year, DateSpan Span)
{
    /// <summary>The date of a day of the year that lies nearest to the season's middle; the day is the site's own, already placed in its hemisphere.</summary>
    public DateOnly Nearest(AnnualDay placed)
    {
        int middle = Span.First.DayNumber + Span.Days / 2;
        DateOnly nearest = placed.In(Year);
        foreach (int year in (ReadOnlySpan<int>)[Year - 1, Year + 1])
        {
            DateOnly other = placed.In(year);
            if (Math.Abs(other.DayNumber - middle) < Math.Abs(nearest.DayNumber - middle)) nearest = other;
        }

        return nearest;
    }
}
