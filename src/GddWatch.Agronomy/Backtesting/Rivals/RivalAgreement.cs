namespace GddWatch.Agronomy.Backtesting.Rivals;

/// <summary>How the dates of another way lie beside a treatment's windows, where nothing was observed that could say which is right.</summary>
/// <param name="Rival">The other way.</param>
/// <param name="Seasons">In how many seasons it names a date and the window opened for certain.</param>
/// <param name="MeanDaysAfterOpening">How long after the opening its date lies in the mean; negative is before [days].</param>
/// <param name="MeanDaysApart">How far its date lies from the opening in the mean, on either side [days].</param>
/// <param name="InsideWindow">In how many of these seasons its date lies in the open window.</param>
public sealed record RivalAgreement(Rival Rival, int Seasons, double MeanDaysAfterOpening, double MeanDaysApart, int InsideWindow)
{
    /// <summary>The agreement of one way over some seasons; null where no season has both.</summary>
    public static RivalAgreement? Of(IReadOnlyList<ComparedSeason> seasons, Rival rival)
    {
        ArgumentNullException.ThrowIfNull(seasons);
        (ComparedSeason Season, DateOnly Date, int Days)[] both = [.. seasons
            .Where(season => season.Dates.OpensForCertain is not null && season.DateBy(rival) is not null)
            .Select(season => (season, season.DateBy(rival)!.Value, season.DateBy(rival)!.Value.DayNumber - season.Dates.OpensForCertain!.Value.DayNumber))];
        return both.Length == 0
            ? null
            : new RivalAgreement(rival, both.Length, both.Average(each => each.Days), both.Average(each => Math.Abs((double)each.Days)), both.Count(each => each.Season.Dates.IsOpenOn(each.Date)));
    }
}
