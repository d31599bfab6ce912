using GddWatch.Agronomy.Heat;
using GddWatch.Agronomy.Journal;
using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Treatments.Conditions;

namespace GddWatch.Agronomy.Windows;

/// <summary>One season at one site, as conditions look at it.</summary>
public sealed class SeasonView
{
    private readonly Dictionary<SoilTemperatureCondition, bool> passesAtStart;
    private readonly Dictionary<Condition, UsualDate> usual;
    private readonly Dictionary<Condition, UsualValue> peaks;
    private readonly Dictionary<Condition, GrowthFalls> falls;
    private readonly Dictionary<Condition, TreatmentDone[]> records;
    private readonly Dictionary<(HeatSince Heat, DateOnly After), HeatAfterDay> heatAfter = [];

    /// <summary>The view of a season.</summary>
    public SeasonView(SiteMetrics metrics, Season season)
    {
        ArgumentNullException.ThrowIfNull(metrics);
        Metrics = metrics;
        Season = season;
        FirstIndex = metrics.Series.IndexOf(season.Span.First);
        passesAtStart = new(ReferenceEqualityComparer.Instance);
        usual = new(ReferenceEqualityComparer.Instance);
        peaks = new(ReferenceEqualityComparer.Instance);
        falls = new(ReferenceEqualityComparer.Instance);
        records = new(ReferenceEqualityComparer.Instance);
    }

    /// <summary>The same season as it goes on in one future. What earlier seasons and the records say is the same in all futures, and worked out once.</summary>
    private SeasonView(SeasonView before, SiteMetrics future)
    {
        Metrics = future;
        Season = before.Season;
        FirstIndex = future.Series.IndexOf(before.Season.Span.First);
        passesAtStart = new(ReferenceEqualityComparer.Instance);
        usual = before.usual;
        peaks = before.peaks;
        falls = before.falls;
        records = before.records;
    }

    /// <summary>The site's weather and what follows from it.</summary>
    public SiteMetrics Metrics { get; }

    /// <summary>The season.</summary>
    public Season Season { get; }

    /// <summary>The place of the season's first day among the days of the weather; may lie outside them.</summary>
    internal int FirstIndex { get; }

    /// <summary>The same season in a future that begins where this weather ends.</summary>
    internal SeasonView In(SiteMetrics future) => new(this, future);

    private Hemisphere Hemisphere => Metrics.Site.Hemisphere;

    /// <summary>The date, nearest to the middle of the season, of a day of the year that is written for the north.</summary>
    public DateOnly DateInSeason(AnnualDay northern) => Season.Nearest(Hemisphere.Place(northern));

    /// <summary>The day from which a heat sum counts that is read on a day; where it waits for the weather, the day on which the waiting began.</summary>
    public DateOnly HeatSumStart(HeatSumDefinition sum, DateOnly day)
    {
        ArgumentNullException.ThrowIfNull(sum);
        if (Metrics.HeatSumSeasonOf(sum, day) is { } season) return season.CountsFrom is { } counts && counts <= day ? counts : season.Start;
        DateOnly start = Hemisphere.Place(sum.Start).In(day.Year);
        return start <= day ? start : Hemisphere.Place(sum.Start).In(day.Year - 1);
    }

    /// <summary>Whether the soil passes the condition's threshold so early in the season that it counts as already past it at the start.</summary>
    public bool PassesAtStart(SoilTemperatureCondition condition)
    {
        ArgumentNullException.ThrowIfNull(condition);
        if (passesAtStart.TryGetValue(condition, out bool known)) return known;
        int startDays = condition.WhereAlreadySo?.StartDays ?? 1;
        bool passes = false;
        for (int i = 0; i < startDays && !passes; i++)
        {
            passes = condition.CountPast(this, Season.Span.First.AddDays(i), condition.Threshold).Past >= condition.Holding.Days;
        }

        passesAtStart.Add(condition, passes);
        return passes;
    }

    /// <summary>The first day that counts for soil that is past the threshold at the season's start, and where it comes from.</summary>
    public UsualDate EarliestWhereAlreadySo(SoilTemperatureCondition condition)
    {
        ArgumentNullException.ThrowIfNull(condition);
        WhereAlreadySo rule = condition.WhereAlreadySo ?? throw new ArgumentException("The condition has no rule for soil already past its threshold.", nameof(condition));
        if (!usual.TryGetValue(condition, out UsualDate date))
        {
            date = Metrics.Climate.UsualSoilPassage(this, condition, rule);
            usual.Add(condition, date);
        }

        return date with { Day = date.Day!.Value.AddDays(-rule.DaysBeforeUsual) };
    }

    /// <summary>The usual first freeze of the season, from earlier seasons.</summary>
    public UsualDate UsualFirstFreeze(DaysBeforeFirstFreeze condition)
    {
        ArgumentNullException.ThrowIfNull(condition);
        if (usual.TryGetValue(condition, out UsualDate known)) return known;
        UsualDate date = Metrics.Climate.UsualFirstFreeze(this, condition);
        usual.Add(condition, date);
        return date;
    }

    /// <summary>The usual last freeze that is nearest to the season, from earlier winters.</summary>
    public UsualDate UsualLastFreeze(DaysAfterLastFreeze condition)
    {
        ArgumentNullException.ThrowIfNull(condition);
        if (usual.TryGetValue(condition, out UsualDate known)) return known;
        UsualDate date = Metrics.Climate.LastFreeze.Of(this, condition);
        usual.Add(condition, date);
        return date;
    }

    /// <summary>The usual yearly peak of growth, from earlier years.</summary>
    public UsualValue UsualGrowthPeak(GrowthPotentialCondition condition)
    {
        ArgumentNullException.ThrowIfNull(condition);
        if (peaks.TryGetValue(condition, out UsualValue known)) return known;
        UsualValue peak = Metrics.Climate.Growth.Peak(condition.Turf, Season.Span.First, condition.OfPeak);
        peaks.Add(condition, peak);
        return peak;
    }

    /// <summary>When growth usually falls, from earlier years.</summary>
    internal GrowthFalls UsualFallOfGrowth(DaysBeforeGrowthFalls condition)
    {
        if (!falls.TryGetValue(condition, out GrowthFalls? known))
        {
            known = Metrics.Climate.Growth.Falls(condition, Season.Span.First);
            falls.Add(condition, known);
        }

        return known;
    }

    /// <summary>The last record of a treatment up to a day and on it; null where there is none, or it is too old to count.</summary>
    internal TreatmentDone? LastDone(SinceTreatment condition, DateOnly day)
    {
        if (!records.TryGetValue(condition, out TreatmentDone[]? known))
        {
            known = [.. Metrics.Journal.Done(condition.Treatment, DateOnly.MaxValue)];
            records.Add(condition, known);
        }

        for (int i = known.Length - 1; i >= 0; i--)
        {
            if (known[i].On <= day) return day.DayNumber - known[i].On.DayNumber <= condition.WithinDays ? known[i] : null;
        }

        return null;
    }

    /// <summary>The heat gathered after a day by the end of another [°C-days]; NaN where it is not known.</summary>
    internal double HeatAfter(HeatSince heat, DateOnly after, DateOnly day)
    {
        if (!heatAfter.TryGetValue((heat, after), out HeatAfterDay? known))
        {
            known = new HeatAfterDay(Metrics.Whole.Series, heat, after);
            heatAfter.Add((heat, after), known);
        }

        return known.Until(day);
    }
}
