using GddWatch.Agronomy.Weather.Checks;
using GddWatch.Agronomy.Weather.Filling;

namespace GddWatch.Agronomy.Weather;

/// <summary>
/// All that came in about a site's weather, and what was known of it on each day. Checked and filled once over the whole record; what is known on a day is then
/// cut out of it, so that a season is lived through without doing it again each day.
/// </summary>
public sealed class WeatherHistory
{
    /// <summary>For how many days after it was issued a forecast still says something of the days to come [days].</summary>
    public const int ForecastIsFreshDays = 1;

    private readonly IReadOnlyList<FillingNeighbour> neighbours;
    private readonly DailySeries settled;
    private readonly IReadOnlyList<FilledValue> settledFillings;
    private readonly (DateOnly From, DateOnly Before)[] unsettled;

    private WeatherHistory(DailySeries series, IReadOnlyList<Doubt> doubts, IReadOnlyList<FillingNeighbour> neighbours, IReadOnlyList<Forecast> forecasts)
    {
        Series = series;
        Forecasts = [.. forecasts.OrderBy(forecast => forecast.IssuedOn)];
        this.neighbours = neighbours;
        Doubts = doubts;
        settled = Without(series, [.. Doubts.Where(doubt => doubt.ClearedOn is null)]);
        settledFillings = FillingLadder.FillingsOf(settled, neighbours, Forecasts);
        unsettled =
        [
            .. Doubts.Where(doubt => doubt.ClearedOn is not null).Select(doubt => (doubt.KnownFrom, doubt.ClearedOn!.Value)),
            .. Doubts.Where(doubt => doubt.ClearedOn is null && doubt.KnownFrom > doubt.Day).Select(doubt => (doubt.Day, doubt.KnownFrom)),
        ];
    }

    /// <summary>The days as they came in, the doubted ones among them.</summary>
    public DailySeries Series { get; }

    /// <summary>The forecasts as they were issued, the earliest first.</summary>
    public IReadOnlyList<Forecast> Forecasts { get; }

    /// <summary>Every doubt, each with the days on which it is held.</summary>
    public IReadOnlyList<Doubt> Doubts { get; }

    /// <summary>The history of a site's weather.</summary>
    /// <param name="series">The days as they came in.</param>
    /// <param name="doubts">What <see cref="QualityControl.DoubtsOf"/> gave for them.</param>
    /// <param name="neighbours">What may fill holes: other feeds and sites near by, without what is doubted in them (<see cref="BelievedOnItsDay"/>).</param>
    /// <param name="forecasts">The forecasts for the site, as they were issued; of those of one day the last one counts.</param>
    public static WeatherHistory Of(DailySeries series, IReadOnlyList<Doubt> doubts, IReadOnlyList<FillingNeighbour> neighbours, IReadOnlyList<Forecast> forecasts)
    {
        ArgumentNullException.ThrowIfNull(series);
        ArgumentNullException.ThrowIfNull(doubts);
        ArgumentNullException.ThrowIfNull(neighbours);
        ArgumentNullException.ThrowIfNull(forecasts);
        return new WeatherHistory(series, doubts, neighbours, forecasts);
    }

    /// <summary>The days of a series that may fill holes elsewhere: without what was doubted on its own day, whatever became of the doubt, so that nothing later is looked at.</summary>
    public static DailySeries BelievedOnItsDay(DailySeries series, IReadOnlyList<Doubt> doubts)
    {
        ArgumentNullException.ThrowIfNull(series);
        ArgumentNullException.ThrowIfNull(doubts);
        return Without(series, [.. doubts.Where(doubt => doubt.KnownFrom == doubt.Day)]);
    }

    /// <summary>
    /// What is known on a day: the days up to it, without what is doubted as of it, filled by what was known by then. Later days and later forecasts play no part:
    /// the history of the days up to it gives the same. Null where the weather begins only after that day.
    /// </summary>
    public KnownWeather? AsOf(DateOnly day)
    {
        if (day < Series.FirstDay) return null;
        DateOnly through = day < Series.LastDay ? day : Series.LastDay;
        // When a doubt will be cleared is not known yet.
        Doubt[] held = [.. Doubts.Where(doubt => doubt.HoldsOn(through)).Select(doubt => doubt with { ClearedOn = null })];
        FilledSeries filled;
        if (Array.Exists(unsettled, span => span.From <= through && through < span.Before))
        {
            // On such a day something was doubted that later was not, or not yet: it is filled as of that day alone.
            DailySeries then = Without(Series.Until(through)!, held);
            filled = FillingLadder.AsOf(then, through, FillingLadder.FillingsOf(then, neighbours, Forecasts));
        }
        else
        {
            filled = FillingLadder.AsOf(settled, through, settledFillings);
        }

        Forecast[] issued = [.. Forecasts.Where(forecast => forecast.IssuedOn <= day)];
        Forecast? fresh = issued.LastOrDefault();
        if (fresh is not null && fresh.IssuedOn.AddDays(ForecastIsFreshDays) < day) fresh = null;
        return new KnownWeather(MarkSuspect(filled.Series, held), held, filled.Fillings, fresh) { Issued = issued };
    }

    /// <summary>The series with the doubted values missing.</summary>
    private static DailySeries Without(DailySeries series, Doubt[] doubts)
    {
        if (doubts.Length == 0) return series;
        double[] minimumC = series.MinimumAirC.ToArray(), maximumC = series.MaximumAirC.ToArray();
        foreach (Doubt doubt in doubts.Where(doubt => series.Holds(doubt.Day))) (doubt.Variable == WeatherVariable.MinimumAirC ? minimumC : maximumC)[series.IndexOf(doubt.Day)] = double.NaN;
        return series.WithAirTemperature(minimumC, maximumC, series.MinimumMarks.ToArray(), series.MaximumMarks.ToArray());
    }

    private static DailySeries MarkSuspect(DailySeries series, Doubt[] doubts)
    {
        if (doubts.Length == 0) return series;
        Mark[] minimumMarks = series.MinimumMarks.ToArray(), maximumMarks = series.MaximumMarks.ToArray();
        foreach (Doubt doubt in doubts) (doubt.Variable == WeatherVariable.MinimumAirC ? minimumMarks : maximumMarks)[series.IndexOf(doubt.Day)] = Mark.Suspect;
        return series.WithAirTemperature(series.MinimumAirC.ToArray(), series.MaximumAirC.ToArray(), minimumMarks, maximumMarks);
    }
}
