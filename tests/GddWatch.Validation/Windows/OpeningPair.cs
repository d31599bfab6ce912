using GddWatch.Agronomy.Treatments;
using GddWatch.Agronomy.Weather;
using GddWatch.Agronomy.Windows;

namespace GddWatch.Validation.Windows;

/// <summary>One season of one treatment at one station, judged by the service's judge from estimated and from measured soil.</summary>
/// <param name="Station">The station.</param>
/// <param name="Estimated">From estimated soil.</param>
/// <param name="Measured">From measured soil.</param>
internal sealed record OpeningPair(StationWeather Station, Window Estimated, Window Measured)
{
    /// <summary>So many days before the earlier opening the measurement must be whole [days].</summary>
    public const int WholeDaysBefore = 30;

    /// <summary>
    /// Whether the measured soil at 5 cm has a value of its own on every day from 30 days before the earlier opening to the later one, or, where only one opened, from 30 days
    /// before that to 30 days after; where none opened, from the season's start to its end. Otherwise the season is left out, so that no hole is taken for an error of the estimate.
    /// </summary>
    public bool IsWhole { get; } = Whole(Station, Estimated, Measured);

    /// <summary>Whether both opened, on days that are certain.</summary>
    public bool BothOpened => Estimated.FirstOpening is not null && Measured.FirstOpening is not null && !Estimated.MayHaveOpenedEarlier && !Measured.MayHaveOpenedEarlier;

    /// <summary>Whether only the one or only the other opened.</summary>
    public bool OneOpened => Estimated.FirstOpening is null != Measured.FirstOpening is null;

    /// <summary>Days from the measured opening to the estimated one; only where both opened.</summary>
    public int LateBy => Estimated.FirstOpening!.Day.DayNumber - Measured.FirstOpening!.Day.DayNumber;

    /// <summary>How far apart they opened [days]; only where both opened.</summary>
    public int Apart => Math.Abs(LateBy);

    /// <summary>The pairs of all seasons that the weather holds.</summary>
    public static IEnumerable<OpeningPair> Of(StationWeather station, Treatment treatment)
    {
        IReadOnlyList<Window> measured = Agronomy.Backtesting.Backtest.Seasons([treatment], station.Measured);
        return Agronomy.Backtesting.Backtest.Seasons([treatment], station.Estimated).Select((window, index) => new OpeningPair(station, window, measured[index]));
    }

    private static bool Whole(StationWeather station, Window estimated, Window measured)
    {
        DateOnly?[] openings = [estimated.FirstOpening?.Day, measured.FirstOpening?.Day];
        DateOnly[] days = [.. openings.OfType<DateOnly>()];
        DateOnly from = days.Length == 0 ? estimated.Season.Span.First : days.Min().AddDays(-WholeDaysBefore);
        DateOnly until = days.Length switch { 0 => estimated.Season.Span.Last, 1 => days[0].AddDays(WholeDaysBefore), _ => days.Max() };
        ReadOnlySpan<double> soil = station.Series.Column(WeatherVariable.Soil5CmC);
        for (DateOnly day = from; day <= until; day = day.AddDays(1))
        {
            if (!station.Series.Holds(day) || double.IsNaN(soil[station.Series.IndexOf(day)])) return false;
        }

        return true;
    }
}
