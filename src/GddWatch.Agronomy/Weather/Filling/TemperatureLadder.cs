namespace GddWatch.Agronomy.Weather.Filling;

/// <summary>The rungs for one of the two temperatures of a site.</summary>
internal sealed class TemperatureLadder(DailySeries series, WeatherVariable variable, IReadOnlyList<FillingNeighbour> neighbours, Forecast[] forecasts)
{
    private readonly double[] readingsC = Reading.All(series, variable);
    private readonly FillingNeighbour[] otherFeeds = [.. neighbours.Where(each => each.IsSameSite)];
    private readonly FillingNeighbour[] otherSites = [.. neighbours.Where(each => !each.IsSameSite)];
    private SiteClimatology? climatology;

    public WeatherVariable Variable => variable;

    /// <summary>The reading of a day [°C], NaN where there is none.</summary>
    public double ReadingC(int index) => readingsC[index];

    public bool IsMissing(int index) => double.IsNaN(readingsC[index]);

    /// <summary>
    /// What is offered for a missing day on the day itself, and what takes its place once the hole's later side is there: the line between its sides, where
    /// neither a neighbour nor a forecast told of the day.
    /// </summary>
    public (Offer? AtOnce, Offer? Later, int LaterFrom) OffersFor(int index)
    {
        DateOnly day = series.DayAt(index);
        if (NeighbouringSite.Of(series, variable, day, otherFeeds) is { } here) return (new Offer(FillingRung.SecondFeed, here.ValueC, here.ErrorC), null, index);
        if (NeighbouringSite.Of(series, variable, day, otherSites) is { } near) return (new Offer(FillingRung.NeighbouringSite, near.ValueC, near.ErrorC), null, index);
        if (ForecastAsIssued.Of(forecasts, variable, day) is { } told) return (new Offer(FillingRung.Forecast, told.ValueC, told.ErrorC), null, index);
        Offer? atOnce = FromOwnPast(index);
        return BetweenNeighbours.Of(readingsC, index) is { } line
            ? (atOnce, new Offer(FillingRung.BetweenNeighbours, line.ValueC, line.ErrorC), line.KnownFrom)
            : (atOnce, null, index);
    }

    private Offer? FromOwnPast(int index)
    {
        // Where too few years can be known, the sums over them are not even made.
        if (index >= (SiteClimatology.YearsNeeded - 1) * 365)
        {
            climatology ??= new SiteClimatology(series.FirstDay, readingsC);
            if (climatology.Of(index) is { } usual) return new Offer(FillingRung.Climatology, usual.ValueC, usual.ErrorC);
        }

        return LastKnownDay.Of(readingsC, index) is { } last ? new Offer(FillingRung.LastKnownDay, last.ValueC, last.ErrorC) : null;
    }
}
