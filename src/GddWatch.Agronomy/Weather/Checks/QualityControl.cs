namespace GddWatch.Agronomy.Weather.Checks;

/// <summary>Quality control of daily air temperatures.</summary>
public static class QualityControl
{
    /// <summary>
    /// Gives every doubt about the minima and maxima of a series, each with the days on which it is held.
    /// <para>The days are walked through once; on each day the checks run in the order of <see cref="QualityCheck"/>, and a value that one of them doubts is missing
    /// for those after it. So the doubts that hold on a day D are those of the series as it stood on D: nothing after D is looked at. A value may have several
    /// doubts where a later day, such as the twentieth equal one of a streak, brings one more.</para>
    /// <para>Values [°C]. Valid for any length; the checks against the climate need ten earlier years, see each. The values of the first ten years are never judged by them.</para>
    /// <para>A missing value is not doubted. One that was filled or forecast counts as missing, since it is no measurement; other variables are not looked at.</para>
    /// <para>Source: Durre, Menne, Gleason, Houston and Vose 2010, Comprehensive automated quality assurance of daily surface observations,
    /// J. Appl. Meteorol. Climatol. 49:1615-1633 (checks and order SEEN at the agency's page on quality control and in an open implementation).</para>
    /// </summary>
    /// <param name="series">The series as it was read.</param>
    /// <param name="neighbours">Places nearby; those beyond 75 km are left out, and fewer than three are no help. Their days after D are not looked at on D either.</param>
    public static IReadOnlyList<Doubt> DoubtsOf(DailySeries series, IReadOnlyList<NeighbourSeries> neighbours)
    {
        ArgumentNullException.ThrowIfNull(series);
        ArgumentNullException.ThrowIfNull(neighbours);
        var walk = new QualityWalk(series, neighbours);
        walk.GoOn(series.LastDay);
        return walk.Doubts;
    }
}
