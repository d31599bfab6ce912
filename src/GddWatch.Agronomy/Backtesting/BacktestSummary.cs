using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Windows;
using MathNet.Numerics.Statistics;

namespace GddWatch.Agronomy.Backtesting;

/// <summary>How a treatment's window at a site went over past seasons.</summary>
public sealed record BacktestSummary
{
    /// <summary>The site's id.</summary>
    public required string Site { get; init; }

    /// <summary>The treatment's id.</summary>
    public required string Treatment { get; init; }

    /// <summary>How many seasons were judged.</summary>
    public required int Seasons { get; init; }

    /// <summary>How many of them opened, on a day that is certain.</summary>
    public required int Opened { get; init; }

    /// <summary>How many opened on a day before which too little was known; left out of the dates below.</summary>
    public required int OpenedUncertain { get; init; }

    /// <summary>How many never opened; those that could not be judged to the end are among them.</summary>
    public required int NeverOpened { get; init; }

    /// <summary>How many could not be judged to the end, for want of weather.</summary>
    public required int NotJudged { get; init; }

    /// <summary>How often a window opened again within its season, over all seasons.</summary>
    public required int Reopenings { get; init; }

    /// <summary>Median opening, type 8 of Hyndman and Fan 1996; null where none opened.</summary>
    public required AnnualDay? MedianOpening { get; init; }

    /// <summary>Earliest opening in its season.</summary>
    public required AnnualDay? EarliestOpening { get; init; }

    /// <summary>Latest opening in its season.</summary>
    public required AnnualDay? LatestOpening { get; init; }

    /// <summary>Standard deviation of the opening dates between seasons [days]; null with fewer than two.</summary>
    public required double? OpeningSpreadDays { get; init; }

    /// <summary>Median close, type 8 of Hyndman and Fan 1996; null where none closed.</summary>
    public required AnnualDay? MedianClose { get; init; }

    /// <summary>Earliest close in its season.</summary>
    public required AnnualDay? EarliestClose { get; init; }

    /// <summary>Latest close in its season.</summary>
    public required AnnualDay? LatestClose { get; init; }

    /// <summary>The opening before which one in ten of the certain ones lay, type 8 of Hyndman and Fan 1996; null with fewer than five.</summary>
    public required AnnualDay? EarlyOpening { get; init; }

    /// <summary>The opening after which one in ten of them lay; null with fewer than five.</summary>
    public required AnnualDay? LateOpening { get; init; }

    /// <summary>Median number of days on which it stood open, over the seasons in which it opened; null where none did [days].</summary>
    public required double? MedianDaysOpen { get; init; }

    /// <summary>The summary of the windows of one treatment at one site.</summary>
    /// <exception cref="ArgumentException">There is no window.</exception>
    public static BacktestSummary Of(IReadOnlyList<Window> windows)
    {
        if (windows.Count == 0) throw new ArgumentException("A summary needs at least one window.", nameof(windows));
        Window first = windows[0];
        Window[] certain = [.. windows.Where(window => window.FirstOpening is not null && !window.MayHaveOpenedEarlier)];
        double[] openings = [.. certain.Select(window => Offset(window, window.FirstOpening!))];
        double[] closes = [.. windows.Where(window => window.LastClosing is not null).Select(window => Offset(window, window.LastClosing!))];
        double[] open = [.. windows.Where(window => window.FirstOpening is not null).Select(window => (double)new SeasonDates(window).DaysOpen)];
        return new BacktestSummary
        {
            Site = first.Site.Id,
            Treatment = first.Treatment.Id,
            Seasons = windows.Count,
            Opened = certain.Length,
            OpenedUncertain = windows.Count(window => window.MayHaveOpenedEarlier),
            NotJudged = windows.Count(window => window.CouldNotBeJudged),
            NeverOpened = windows.Count(window => window.FirstOpening is null),
            Reopenings = windows.Sum(window => window.Reopenings),
            MedianOpening = openings.Length == 0 ? null : Day(first, Quantiles.Median(openings)),
            EarliestOpening = openings.Length == 0 ? null : Day(first, openings.Min()),
            LatestOpening = openings.Length == 0 ? null : Day(first, openings.Max()),
            OpeningSpreadDays = openings.Length < 2 ? null : openings.StandardDeviation(),
            MedianClose = closes.Length == 0 ? null : Day(first, Quantiles.Median(closes)),
            EarliestClose = closes.Length == 0 ? null : Day(first, closes.Min()),
            LatestClose = closes.Length == 0 ? null : Day(first, closes.Max()),
            EarlyOpening = openings.Length < 5 ? null : Day(first, Quantiles.Of(openings, 0.1)),
            LateOpening = openings.Length < 5 ? null : Day(first, Quantiles.Of(openings, 0.9)),
            MedianDaysOpen = open.Length == 0 ? null : Quantiles.Median(open),
        };
    }

    private static double Offset(Window window, Transition change) => change.Day.DayNumber - window.Season.Span.First.DayNumber;

    private static AnnualDay Day(Window window, double offset) => AnnualDay.Of(window.Season.Span.First.AddDays((int)Math.Round(offset)));
}
