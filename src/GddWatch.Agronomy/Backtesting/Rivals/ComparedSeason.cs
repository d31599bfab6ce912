namespace GddWatch.Agronomy.Backtesting.Rivals;

/// <summary>One season of a treatment at a site: the judged window, the other ways' dates, and what was seen.</summary>
/// <param name="Dates">The window.</param>
/// <param name="Calendar">The fixed date that people go by; null where none is given.</param>
/// <param name="BestFixedDate">The best fixed date by the other years: of what was seen where anything was, else of the window's own openings; null where no other year is known.</param>
/// <param name="RunningMean">The first passage of a running mean of air temperature; null where it did not come, or there is no such rule.</param>
/// <param name="Seen">The day on which the window should have opened by what was seen; null where nothing was, or it was looked for in vain.</param>
/// <param name="LookedForInVain">Whether somebody looked for it all season and it did not come.</param>
public sealed record ComparedSeason(SeasonDates Dates, DateOnly? Calendar, DateOnly? BestFixedDate, DateOnly? RunningMean, DateOnly? Seen, bool LookedForInVain)
{
    /// <summary>The date that a way names.</summary>
    public DateOnly? DateBy(Rival rival) => rival switch
    {
        Rival.Window => Dates.OpensForCertain,
        Rival.Calendar => Calendar,
        Rival.BestFixedDate => BestFixedDate,
        Rival.RunningMean => RunningMean,
        _ => throw new ArgumentOutOfRangeException(nameof(rival), rival, "There is no such way to find the day."),
    };
}
