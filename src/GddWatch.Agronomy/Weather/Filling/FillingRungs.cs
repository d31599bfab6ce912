namespace GddWatch.Agronomy.Weather.Filling;

/// <summary>How people call the means by which a hole was filled.</summary>
public static class FillingRungs
{
    /// <summary>The words for a rung.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The rung is none of those that there are.</exception>
    public static string Words(FillingRung rung) => rung switch
    {
        FillingRung.SecondFeed => "another feed of the site, corrected for its usual difference",
        FillingRung.NeighbouringSite => "a neighbouring site, corrected for its usual difference",
        FillingRung.Forecast => "the forecast as issued",
        FillingRung.BetweenNeighbours => "the line between the days before and after",
        FillingRung.Climatology => "what is usual here at this time of the year",
        FillingRung.LastKnownDay => "the last known day",
        _ => throw new ArgumentOutOfRangeException(nameof(rung), rung, "This means has no words."),
    };
}
