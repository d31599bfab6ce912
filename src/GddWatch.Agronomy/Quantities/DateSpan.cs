namespace GddWatch.Agronomy.Quantities;

/// <summary>Consecutive days; both ends belong to it, since a person who says "from Monday to Friday" means both. Never reversed.</summary>
public readonly record struct DateSpan
{
    /// <summary>The days from the first to the last, both included.</summary>
    /// <exception cref="ArgumentException">The last day is before the first.</exception>
    public DateSpan(DateOnly first, DateOnly last)
    {
        if (last < first) throw new ArgumentException($"A span of days cannot end on {last:yyyy-MM-dd}, before it begins on {first:yyyy-MM-dd}.", nameof(last));
        First = first;
        Last = last;
    }

    /// <summary>The first day.</summary>
    public DateOnly First { get; }

    /// <summary>The last day, included.</summary>
    public DateOnly Last { get; }

    /// <summary>How many days [days].</summary>
    public int Days => Last.DayNumber - First.DayNumber + 1;

    /// <summary>Whether the day lies in it, ends included.</summary>
    public bool Contains(DateOnly day) => day >= First && day <= Last;
}
