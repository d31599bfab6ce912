using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Treatments;
using GddWatch.Agronomy.Treatments.Conditions;
using GddWatch.Agronomy.Weather;
using MathNet.Numerics.Statistics;

namespace GddWatch.Agronomy.Windows;

/// <summary>What is usual at a site, always from seasons before the one that asks, and only where there are at least ten of them.</summary>
public sealed class SiteClimate
{
    /// <summary>How many earlier seasons a usual date needs. Source: the period average of climatological practice needs ten years (SEEN, secondary; science reference 5.1).</summary>
    public const int SeasonsNeeded = 10;

    /// <summary>Missing days before a season's freeze that spoil it [days]. Source: Utah Climate Center, freeze table help (SEEN; science reference 3.9).</summary>
    internal const int MissingDaysThatSpoil = 10;

    /// <summary>The middle of winter in the north, from which the last freeze is searched; DESIGN.</summary>
    private static readonly AnnualDay MidWinter = AnnualDay.Of(1, 15);

    /// <summary>No condition looks farther ahead than this [days]: weather services forecast no farther.</summary>
    private const int LooksAheadDays = 16;

    /// <summary>A usual freeze so long before a season's first day is still its own, past already [days].</summary>
    private const int FreezeShortlyBeforeDays = 60;

    /// <summary>The middle of summer in the north, from which the next first freeze is searched. Source: Utah Climate Center, freeze table help (SEEN; science reference 3.9).</summary>
    internal static readonly AnnualDay MidSummer = AnnualDay.Of(7, 24);

    private readonly SiteMetrics metrics;
    private readonly SiteMemory memory;

    internal SiteClimate(SiteMetrics metrics, SiteMemory memory)
    {
        this.metrics = metrics;
        this.memory = memory;
        Growth = new GrowthClimate(metrics, memory);
        LastFreeze = new LastFreezeClimate(metrics, memory);
    }

    /// <summary>How turf usually grows here.</summary>
    internal GrowthClimate Growth { get; }

    /// <summary>When the last freeze usually comes here.</summary>
    internal LastFreezeClimate LastFreeze { get; }

    /// <summary>How long a window has lasted in the seasons before its own.</summary>
    internal UsualPace PaceOf(Window window)
    {
        (string, int) key = (window.Treatment.Id, window.Season.Year);
        // On its last day a season may look at the days after it.
        DateOnly through = window.Treatment.Season.BeginningIn(window.Season.Year - 1, metrics.Site.Hemisphere).Span.Last.AddDays(LooksAheadDays);
        return memory.Paces.TryGet(key, out UsualPace? known) ? known! : memory.Paces.Keep(key, UsualPace.Before(window, metrics), through);
    }

    /// <summary>
    /// The date of the season by which the first freeze has come with a chance p: with the share pF of earlier seasons that had a freeze and the dates of
    /// those, the empirical quantile at p/pF; no usual date where p is above pF.
    /// <para>Source: mixed discrete and continuous freeze probability after US climate normals (SEEN, science reference 3.9); quantile of type 8,
    /// Hyndman &amp; Fan 1996, Am. Stat. 50:361-365 (SEEN).</para>
    /// </summary>
    public UsualDate UsualFirstFreeze(SeasonView view, DaysBeforeFirstFreeze condition)
    {
        ArgumentNullException.ThrowIfNull(view);
        ArgumentNullException.ThrowIfNull(condition);
        AnnualDay start = metrics.Site.Hemisphere.Place(MidSummer);
        var offsets = new List<double>();
        int withoutFreeze = 0;
        for (int year = metrics.Series.FirstDay.Year; start.In(year) < view.Season.Span.First; year++)
        {
            DateOnly from = start.In(year);
            DateOnly until = Earlier(start.In(year + 1).AddDays(-1), view.Season.Span.First.AddDays(-1));
            // A search that began this very summer is not an earlier season.
            if (until.DayNumber - from.DayNumber < 300) continue;
            if (FreezeOffset(condition.Freeze.Celsius, from, until) is not { } offset) continue;
            if (offset < 0) withoutFreeze++;
            else offsets.Add(offset);
        }

        int seasons = offsets.Count + withoutFreeze;
        if (seasons < SeasonsNeeded)
        {
            string few = $"{OnlyKnown(seasons)}, and {SeasonsNeeded} are needed";
            return condition.Fallback is { } fallback
                ? new UsualDate(view.DateInSeason(fallback), false, $"a fallback for lawns of this kind, since {few}", IsFallback: true)
                : new UsualDate(null, false, few);
        }

        double share = offsets.Count / (double)seasons;
        if (condition.Chance > share) return new UsualDate(null, true, $"it froze in {offsets.Count} of {seasons} earlier seasons");
        double quantile = offsets.QuantileCustom(condition.Chance / share, QuantileDefinition.R8);
        DateOnly summer = SummerBefore(start, (int)Math.Round(quantile), view.Season.Span.First);
        string what = condition.Chance == 0.5 && withoutFreeze == 0 ? "median" : $"{Math.Round(condition.Chance * 100)} % date";
        return new UsualDate(summer.AddDays((int)Math.Round(quantile)), false, $"{what} of {seasons} earlier seasons");
    }

    /// <summary>
    /// The usual first freeze after summer, or the usual last one before it, where it lies within 75 days after a day: the median over at least ten earlier years of the first, or last, day with
    /// a minimum of 0 °C or less. Null where none lies ahead, too few years are known, or a freeze is not usual.
    /// <para>Source: as <see cref="UsualFirstFreeze"/>; the year is split in mid January and on 24 July in the north.</para>
    /// </summary>
    public FreezeAhead? FreezeAhead(DateOnly day)
    {
        const int Ahead = 75;
        (AnnualDay from, bool isFirst) = metrics.Site.Hemisphere.Place(MidSummer) is var summer && LastStart(summer, day) > LastStart(metrics.Site.Hemisphere.Place(MidWinter), day)
            ? (summer, true)
            : (metrics.Site.Hemisphere.Place(MidWinter), false);
        DateOnly start = LastStart(from, day);
        var offsets = new List<double>();
        for (int year = metrics.Series.FirstDay.Year; from.In(year) < start; year++)
        {
            DateOnly first = from.In(year);
            if (first < metrics.Series.FirstDay) continue;
            if (FreezeWithin(first, isFirst ? 200 : 185, isFirst) is { } offset) offsets.Add(offset);
        }

        if (offsets.Count < SeasonsNeeded) return null;
        DateOnly usual = start.AddDays((int)Math.Round(offsets.QuantileCustom(0.5, QuantileDefinition.R8)));
        if (usual <= day || usual > day.AddDays(Ahead)) return null;
        return new FreezeAhead(isFirst ? "Usual first freeze" : "Usual last freeze", $"{Wording.DayInYear(usual)} (median of {offsets.Count} earlier years)");
    }

    private static DateOnly LastStart(AnnualDay annual, DateOnly day)
    {
        DateOnly start = annual.In(day.Year);
        return start <= day ? start : annual.In(day.Year - 1);
    }

    private int? FreezeWithin(DateOnly from, int days, bool isFirst)
    {
        int? found = null;
        for (int offset = 0; offset < days; offset++)
        {
            int index = metrics.Series.IndexOf(from.AddDays(offset));
            if (index < 0 || index >= metrics.Series.Count || !(metrics.Series.MinimumAirC[index] <= 0)) continue;
            found = offset;
            if (isFirst) break;
        }

        return found;
    }

    /// <summary>The median date on which the soil passes the rule's other threshold, counted from the season's start.</summary>
    public UsualDate UsualSoilPassage(SeasonView view, SoilTemperatureCondition condition, WhereAlreadySo rule)
    {
        ArgumentNullException.ThrowIfNull(view);
        ArgumentNullException.ThrowIfNull(condition);
        ArgumentNullException.ThrowIfNull(rule);
        // All days before the season: it has one length every year, so that those before it are over by then.
        return memory.SoilPassages.TryGet((condition, view.Season.Span), out UsualDate known)
            ? known
            : memory.SoilPassages.Keep((condition, view.Season.Span), SoilPassageBefore(view, condition, rule), view.Season.Span.First.AddDays(-1));
    }

    private UsualDate SoilPassageBefore(SeasonView view, SoilTemperatureCondition condition, WhereAlreadySo rule)
    {
        var offsets = new List<double>();
        AnnualDay first = AnnualDay.Of(view.Season.Span.First);
        int days = view.Season.Span.Days;
        for (int year = metrics.Series.FirstDay.Year; year < view.Season.Year; year++)
        {
            DateOnly from = first.In(year);
            var earlier = new SeasonView(metrics, new Season(year, new DateSpan(from, from.AddDays(days - 1))));
            if (PassageOffset(earlier, condition, rule.UsualThreshold) is { } offset) offsets.Add(offset);
        }

        if (offsets.Count < SeasonsNeeded)
        {
            DateOnly fallback = view.DateInSeason(rule.Fallback);
            return new UsualDate(fallback, false, $"{Wording.Days(rule.DaysBeforeUsual)} before {Wording.DayInYear(fallback)}, a fallback, since {OnlyKnown(offsets.Count)}", IsFallback: true);
        }

        double median = offsets.QuantileCustom(0.5, QuantileDefinition.R8);
        DateOnly usual = view.Season.Span.First.AddDays((int)Math.Round(median));
        return new UsualDate(usual, false, $"{Wording.Days(rule.DaysBeforeUsual)} before its usual date of {Wording.DayInYear(usual)}, the median of {offsets.Count} earlier seasons");
    }

    internal static string OnlyKnown(int seasons) => seasons switch
    {
        0 => "no earlier season is known here",
        1 => "only 1 earlier season is known here",
        _ => $"only {seasons} earlier seasons are known here",
    };

    private static int? PassageOffset(SeasonView season, SoilTemperatureCondition condition, Temperature threshold)
    {
        bool anyUnknown = false;
        for (DateOnly day = season.Season.Span.First; day <= season.Season.Span.Last; day = day.AddDays(1))
        {
            (int past, int known) = condition.CountPast(season, day, threshold);
            if (past >= condition.Holding.Days) return anyUnknown ? null : day.DayNumber - season.Season.Span.First.DayNumber;
            // A few days without an estimate at the very start are the model warming up, not a hole in the record.
            if (known == 0 && day.DayNumber - season.Season.Span.First.DayNumber > 20) anyUnknown = true;
        }

        return anyUnknown ? null : season.Season.Span.Days;
    }

    /// <summary>Days from the start of the search to the first freeze; −1 where none came; null where too many days are missing to say.</summary>
    private int? FreezeOffset(double freezeC, DateOnly from, DateOnly until)
    {
        return memory.FirstFreezes.TryGet((freezeC, from, until), out int? known) ? known : memory.FirstFreezes.Keep((freezeC, from, until), Search(), until);

        int? Search()
        {
            int missing = 0;
            for (DateOnly day = from; day <= until; day = day.AddDays(1))
            {
                int index = metrics.Series.IndexOf(day);
                Mark? mark = metrics.Series.Holds(day) ? metrics.Series.QualityAt(index) : null;
                if (mark is not { } known || !known.IsReading())
                {
                    if (++missing >= MissingDaysThatSpoil) return null;
                    continue;
                }

                if (metrics.Series.MinimumAirC[index] <= freezeC) return day.DayNumber - from.DayNumber;
            }

            return -1;
        }
    }

    private static DateOnly Earlier(DateOnly one, DateOnly other) => one < other ? one : other;

    /// <summary>The midsummer whose freeze comes first in the season or after it began; one that came shortly before it counts as the season's too.</summary>
    private static DateOnly SummerBefore(AnnualDay start, int daysToFreeze, DateOnly seasonFirst)
    {
        DateOnly summer = start.In(seasonFirst.Year - 1);
        while (summer.AddDays(daysToFreeze) < seasonFirst.AddDays(-FreezeShortlyBeforeDays)) summer = start.In(summer.Year + 1);
        return summer;
    }
}
