namespace GddWatch.Agronomy.Weather.Checks;

/// <summary>
/// The checks of <see cref="QualityControl"/> on their walk through the days of a series. It may stand still on a day and go on from there later, also over a series that has grown since:
/// on a day only days up to it are looked at, so that what was found out by then still holds.
/// </summary>
public sealed class QualityWalk
{
    private readonly DateOnly firstDay;
    private readonly int days;
    private readonly CheckedValues values;
    private readonly EarlierYears years;
    private readonly DuplicateCheck duplicate;
    private readonly StreakCheck streak;
    private readonly GapCheck gap;
    private readonly ClimatologicalOutlierCheck outlier;
    private readonly SpikeCheck spike;
    private readonly LaggedRangeCheck laggedRange;
    private readonly SpatialRegressionCheck spatial;
    private int next;

    /// <summary>A walk that stands before a series' first day.</summary>
    /// <param name="series">The series as it was read.</param>
    /// <param name="neighbours">Places nearby.</param>
    public QualityWalk(DailySeries series, IReadOnlyList<NeighbourSeries> neighbours)
    {
        ArgumentNullException.ThrowIfNull(series);
        ArgumentNullException.ThrowIfNull(neighbours);
        (firstDay, days) = (series.FirstDay, series.Count);
        values = new CheckedValues(series);
        years = new EarlierYears(values);
        duplicate = new DuplicateCheck(values);
        streak = new StreakCheck(values);
        gap = new GapCheck(values, years);
        outlier = new ClimatologicalOutlierCheck(values, years);
        spike = new SpikeCheck(values);
        laggedRange = new LaggedRangeCheck(values);
        spatial = new SpatialRegressionCheck(values, neighbours);
    }

    private QualityWalk(QualityWalk before, CheckedValues values, int days, IReadOnlyList<NeighbourSeries> neighbours)
    {
        (firstDay, this.days, next, this.values) = (before.firstDay, days, before.next, values);
        years = new EarlierYears(before.years, values);
        duplicate = before.duplicate.In(values);
        streak = before.streak.In(values);
        gap = before.gap.In(values, years);
        outlier = before.outlier.In(values, years);
        spike = new SpikeCheck(values);
        laggedRange = new LaggedRangeCheck(values);
        spatial = new SpatialRegressionCheck(values, neighbours);
    }

    /// <summary>The day up to which it has gone; the day before the first one where it has not set out.</summary>
    public DateOnly Through => firstDay.AddDays(next - 1);

    /// <summary>Every doubt up to then, each with the days on which it is held.</summary>
    public IReadOnlyList<Doubt> Doubts => values.Doubts;

    /// <summary>The same walk where it stands, with what it found out and without any days: to be kept until it goes on over the days as they are then.</summary>
    public QualityWalk AtRest() => new(this, new CheckedValues(values, next), 0, []);

    /// <summary>A walk that stands where this one does, over the days as they are now. This one stays where it is.</summary>
    /// <param name="now">The series. It must begin on the same day, and be the same up to the day on which the walk stands.</param>
    /// <param name="neighbours">The places nearby: the same ones, and the same up to that day.</param>
    /// <exception cref="ArgumentException">The series begins on another day, or ends before the day on which the walk stands.</exception>
    public QualityWalk Over(DailySeries now, IReadOnlyList<NeighbourSeries> neighbours)
    {
        ArgumentNullException.ThrowIfNull(now);
        ArgumentNullException.ThrowIfNull(neighbours);
        if (now.FirstDay != firstDay || now.LastDay < Through)
        {
            throw new ArgumentException($"The series has {now.FirstDay:yyyy-MM-dd} to {now.LastDay:yyyy-MM-dd}; allowed is one from {firstDay:yyyy-MM-dd} to {Through:yyyy-MM-dd} or later.", nameof(now));
        }

        return new QualityWalk(this, new CheckedValues(values, now), now.Count, neighbours);
    }

    /// <summary>Goes on up to a day, that one included; stands where it is if it is there already.</summary>
    /// <param name="day">The day; after the series' last one it is that one.</param>
    public void GoOn(DateOnly day)
    {
        int last = Math.Min(day.DayNumber - firstDay.DayNumber, days - 1);
        for (; next <= last; next++) Judge(next);
    }

    private void Judge(int today)
    {
        years.Advance(today);
        NaughtCheck.Judge(values, today);
        duplicate.Judge(today);
        BoundsCheck.Judge(values, today);
        streak.Judge(today);
        gap.Judge(today);
        outlier.Judge(today);
        InternalCheck.Judge(values, today);
        // What the next day clears goes on to the checks after.
        bool yesterdayWasCleared = spike.Judge(today);
        yesterdayWasCleared = laggedRange.Judge(today, yesterdayWasCleared);
        yesterdayWasCleared = spatial.Judge(today, yesterdayWasCleared);
        if (yesterdayWasCleared) MegaconsistencyCheck.Judge(values, years, today - 1, today);
        MegaconsistencyCheck.Judge(values, years, today, today);
    }
}
