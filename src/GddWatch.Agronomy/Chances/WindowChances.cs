using GddWatch.Agronomy.Windows;

namespace GddWatch.Agronomy.Chances;

/// <summary>How likely a window opens, or an open one closes, by which day, as of a day.</summary>
public sealed record WindowChances
{
    /// <summary>The day as of which it is said.</summary>
    public required DateOnly Day { get; init; }

    /// <summary>The window.</summary>
    public required Window Window { get; init; }

    /// <summary>Whether of the closing of a window that stands open; else of the opening of one that does not.</summary>
    public required bool OfClosing { get; init; }

    /// <summary>The chances, by days after that day.</summary>
    public required DateDistribution Distribution { get; init; }

    /// <summary>From how many of the site's own earlier years.</summary>
    public required int Years { get; init; }

    /// <summary>How many days of a forecast are in it [days].</summary>
    public required int ForecastDays { get; init; }

    /// <summary>What a reader should know of the forecast and the years behind it, a sentence each.</summary>
    public IReadOnlyList<string> Remarks { get; init; } = [];

    /// <summary>The day by which it has come with an even chance; null where it is likelier that it does not come this season.</summary>
    public DateOnly? Median => DayOf(Distribution.Quantile(0.5));

    /// <summary>The first day of the range that holds it with 80 %.</summary>
    public DateOnly Earliest => Day.AddDays(Distribution.Range().First);

    /// <summary>The last day of that range; null where "not at all this season" lies within it.</summary>
    public DateOnly? Latest => DayOf(Distribution.Range().Last);

    /// <summary>The chance that it comes within some days from the day on, that day included.</summary>
    public double Within(int days) => Distribution.By(days);

    /// <summary>The chance that it does not come at all this season.</summary>
    public double NotAtAll => Distribution.Never;

    /// <summary>The chance that it has come by a day.</summary>
    public double By(DateOnly day) => Distribution.By(day.DayNumber - Day.DayNumber);

    private DateOnly? DayOf(int? place) => place is { } days ? Day.AddDays(days) : null;
}
