using GddWatch.Agronomy.Quantities;

namespace GddWatch.Agronomy.Weather.Filling;

/// <summary>
/// Fills holes in the two air temperatures by the first means that there is: a neighbouring site, the forecast as issued, the line between the days on both
/// sides, the site's climatology, the last known day.
/// </summary>
public static class FillingLadder
{
    /// <summary>
    /// Gives all fillings of a series' holes, each with the days as of which it is the best known, ordered by day, temperature and the day it is known from.
    /// <para>A hole is a temperature that is missing, or whose mark says that it is no reading: filled, forecast or suspect. Each of the two temperatures has its own ladder, and a
    /// measured one is kept. A filling that would cross the measured other one is set level with it, and two fillings that would cross meet in their
    /// middle: a minimum is not above its maximum, so that both come nearer to the truth by it.</para>
    /// <para>As of a day only days up to it, and forecasts issued by it, are used: the line is known as of the later of its two sides, and until then the next
    /// rung stands. A hole too long for every rung stays a hole from there on.</para>
    /// <para>Source: the rungs say theirs. Their errors are those of the rung, also where two values were set level.</para>
    /// </summary>
    /// <param name="series">The site's series [°C].</param>
    /// <param name="neighbours">Sites near by, in order of preference among those alike.</param>
    /// <param name="forecasts">Forecasts kept as they were issued; of those of one day the last one is taken.</param>
    public static IReadOnlyList<FilledValue> FillingsOf(DailySeries series, IReadOnlyList<FillingNeighbour> neighbours, IReadOnlyList<Forecast> forecasts)
    {
        ArgumentNullException.ThrowIfNull(series);
        ArgumentNullException.ThrowIfNull(neighbours);
        ArgumentNullException.ThrowIfNull(forecasts);
        Forecast[] byIssue = [.. forecasts.OrderBy(forecast => forecast.IssuedOn)];
        var minimum = new TemperatureLadder(series, WeatherVariable.MinimumAirC, neighbours, byIssue);
        var maximum = new TemperatureLadder(series, WeatherVariable.MaximumAirC, neighbours, byIssue);
        List<FilledValue> fillings = [];
        for (int i = 0; i < series.Count; i++)
        {
            if (minimum.IsMissing(i) || maximum.IsMissing(i)) AddDay(fillings, series, i, minimum, maximum);
        }

        return fillings;
    }

    /// <summary>
    /// Gives the series as it is known on a day: cut there, its holes filled by the fillings that stand as of that day, marked as filled (by the forecast: as forecast).
    /// <para>With the fillings of the whole series this equals what the cut series with its own fillings gives. Holes without a filling stay as they are.</para>
    /// </summary>
    /// <param name="series">The series whose fillings they are [°C].</param>
    /// <param name="day">The day.</param>
    /// <param name="fillings">What <see cref="FillingsOf"/> gave for the series, in its order.</param>
    /// <exception cref="ArgumentOutOfRangeException">The day lies before the series.</exception>
    public static FilledSeries AsOf(DailySeries series, DateOnly day, IReadOnlyList<FilledValue> fillings)
    {
        ArgumentNullException.ThrowIfNull(series);
        ArgumentNullException.ThrowIfNull(fillings);
        DailySeries cut = series.Until(day)
            ?? throw new ArgumentOutOfRangeException(nameof(day), day, $"{nameof(day)} was {day:yyyy-MM-dd}; allowed is {series.FirstDay:yyyy-MM-dd}, the series' first day, or later.");
        FilledValue[] standing = [.. fillings.TakeWhile(each => each.Day <= cut.LastDay).Where(each => each.KnownFrom <= cut.LastDay && !(each.ReplacedOn <= cut.LastDay))];
        if (standing.Length == 0) return new FilledSeries(cut, []);
        double[] minimumC = cut.MinimumAirC.ToArray(), maximumC = cut.MaximumAirC.ToArray();
        Mark[] minimumMarks = cut.MinimumMarks.ToArray(), maximumMarks = cut.MaximumMarks.ToArray();
        for (int i = 0; i < standing.Length; i++)
        {
            FilledValue filling = standing[i];
            bool isMinimum = filling.Variable == WeatherVariable.MinimumAirC;
            int index = cut.IndexOf(filling.Day);
            (isMinimum ? minimumC : maximumC)[index] = filling.ValueC;
            (isMinimum ? minimumMarks : maximumMarks)[index] = filling.Rung == FillingRung.Forecast ? Mark.Forecast : Mark.Filled;
            standing[i] = filling with { ReplacedOn = null };
        }

        return new FilledSeries(cut.WithAirTemperature(minimumC, maximumC, minimumMarks, maximumMarks), standing);
    }

    private static void AddDay(List<FilledValue> fillings, DailySeries series, int index, TemperatureLadder minimum, TemperatureLadder maximum)
    {
        var low = DaysCourse.Of(minimum, index);
        var high = DaysCourse.Of(maximum, index);
        Span<int> changes = [index, Math.Min(low.LaterFrom, high.LaterFrom), Math.Max(low.LaterFrom, high.LaterFrom)];
        List<(int From, Offer Offer)> lows = [], highs = [];
        foreach (int from in changes)
        {
            (Offer? lowest, Offer? highest) = Uncrossed(low, high, from);
            if (lowest is { } lowOffer && (lows.Count == 0 || lows[^1].Offer != lowOffer)) lows.Add((from, lowOffer));
            if (highest is { } highOffer && (highs.Count == 0 || highs[^1].Offer != highOffer)) highs.Add((from, highOffer));
        }

        AddCourse(fillings, series, index, minimum.Variable, lows);
        AddCourse(fillings, series, index, maximum.Variable, highs);
    }

    private static (Offer? Lowest, Offer? Highest) Uncrossed(DaysCourse low, DaysCourse high, int from)
    {
        Offer? lowest = low.AsOf(from), highest = high.AsOf(from);
        double lowestC = lowest?.ValueC ?? low.ReadingC, highestC = highest?.ValueC ?? high.ReadingC;
        if (!(lowestC > highestC)) return (lowest, highest);
        double levelC = lowest is null ? lowestC : highest is null ? highestC : (lowestC + highestC) / 2;
        return (lowest is { } l ? l with { ValueC = levelC } : null, highest is { } h ? h with { ValueC = levelC } : null);
    }

    private static void AddCourse(List<FilledValue> fillings, DailySeries series, int index, WeatherVariable variable, List<(int From, Offer Offer)> course)
    {
        for (int i = 0; i < course.Count; i++)
        {
            (int from, Offer offer) = course[i];
            DateOnly? replacedOn = i + 1 < course.Count ? series.DayAt(course[i + 1].From) : null;
            fillings.Add(new FilledValue(series.DayAt(index), variable, offer.ValueC, offer.Rung, offer.ErrorC, series.DayAt(from), replacedOn));
        }
    }

    /// <summary>What is known of one temperature of a day, as time goes on: its reading, or what is offered at once and later.</summary>
    private readonly record struct DaysCourse(double ReadingC, Offer? AtOnce, Offer? Later, int LaterFrom)
    {
        public static DaysCourse Of(TemperatureLadder ladder, int index)
        {
            if (!ladder.IsMissing(index)) return new DaysCourse(ladder.ReadingC(index), null, null, index);
            (Offer? atOnce, Offer? later, int laterFrom) = ladder.OffersFor(index);
            return new DaysCourse(double.NaN, atOnce, later, laterFrom);
        }

        public Offer? AsOf(int index) => Later is not null && index >= LaterFrom ? Later : AtOnce;
    }
}
