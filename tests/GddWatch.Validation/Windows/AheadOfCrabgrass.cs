using MathNet.Numerics.Statistics;

namespace GddWatch.Validation.Windows;

/// <summary>How long before crabgrass a window opened, by what was measured; seasons whose measurement does not say are left out.</summary>
/// <param name="DaysToSoilAt55">Days from the opening to the first day of a week at 55 °F, negative where it came after.</param>
/// <param name="DaysToEmergence">Days from the opening to the first emergence by the soil's heat sum.</param>
/// <param name="AfterAWeekAt55">Seasons that opened only after the soil had been at 55 °F for a week.</param>
/// <param name="OfThemInWinter">Of those, seasons in which that week lies in January or February, when nothing would come up yet.</param>
/// <param name="AfterEmergence">Seasons that opened only after the first emergence.</param>
/// <param name="EarlierThanSixWeeks">Seasons that opened more than six weeks before the week at 55 °F.</param>
internal sealed record AheadOfCrabgrass(double[] DaysToSoilAt55, double[] DaysToEmergence, int AfterAWeekAt55, int OfThemInWinter, int AfterEmergence, int EarlierThanSixWeeks)
{
    private const int TooEarlyDays = 42;

    /// <summary>The figures of a list of openings, each with the dates of its season.</summary>
    public static AheadOfCrabgrass Of(IReadOnlyList<(DateOnly Opening, CrabgrassDates Dates)> openings)
    {
        var warm = openings.Where(each => each.Dates.SoilAt55 is not null).Select(each => (Days: each.Dates.SoilAt55!.Value.DayNumber - each.Opening.DayNumber, Warm: each.Dates.SoilAt55.Value)).ToList();
        double[] emergence = [.. openings.Where(each => each.Dates.FirstEmergence is not null).Select(each => (double)(each.Dates.FirstEmergence!.Value.DayNumber - each.Opening.DayNumber))];
        var late = warm.Where(each => each.Days <= -CrabgrassDates.WeekDays).ToList();
        return new AheadOfCrabgrass(
            [.. warm.Select(each => (double)each.Days)],
            emergence,
            late.Count,
            late.Count(each => each.Warm.Month <= 2),
            emergence.Count(days => days < 0),
            warm.Count(each => each.Days > TooEarlyDays));
    }

    /// <summary>The figures in one line.</summary>
    public string InWords() => DaysToSoilAt55.Length == 0 ? "no season is known" : FormattableString.Invariant(
        $"{DaysToSoilAt55.Median():0} days before a week at 55 °F in the median ({DaysToSoilAt55.Quantile(0.1):0} to {DaysToSoilAt55.Quantile(0.9):0} in 8 of 10; {DaysToSoilAt55.Length} seasons), after that week in {AfterAWeekAt55} ({OfThemInWinter} of them a week in January or February), more than six weeks before it in {EarlierThanSixWeeks}; {(DaysToEmergence.Length == 0 ? double.NaN : DaysToEmergence.Median()):0} days before first emergence by heat sum in the median, after it in {AfterEmergence} of {DaysToEmergence.Length}");
}
