using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Treatments;
using GddWatch.Agronomy.Treatments.Conditions;

namespace GddWatch.Configuration.Reading;

/// <summary>Finds what can never be in conditions that read well one by one.</summary>
internal static class Contradictions
{
    /// <summary>Why the parts of an "all" can never be met together, in a sentence; null where nothing is against it.</summary>
    public static string? InAll(IReadOnlyList<Condition> parts)
    {
        Condition[] needed = [.. parts.SelectMany(Flat)];
        return needed.SelectMany(one => needed.Select(other => Clash(one, other))).FirstOrDefault(clash => clash is not null);
    }

    /// <summary>An "all" inside an "all" is one list.</summary>
    private static IEnumerable<Condition> Flat(Condition part) => part is AllOf all ? all.Parts.SelectMany(Flat) : [part];

    /// <summary>Whether one asks for more of a value than the other allows.</summary>
    private static string? Clash(Condition one, Condition other) => (one, other) switch
    {
        (SoilTemperatureCondition { Passing: Passing.RisesAbove } low, SoilTemperatureCondition { Passing: Passing.FallsBelow } high)
            when high.Depth == low.Depth && high.MeanOverDays == low.MeanOverDays && high.Threshold < low.Threshold =>
            $"The same soil temperature cannot be at or above {Shown(low.Threshold)} and at or below less than that.",
        (AirTemperatureCondition { Above: { } low } first, AirTemperatureCondition { Below: { } high } second)
            when first.Of == second.Of && first.MeanOverDays == second.MeanOverDays && first.NextDays == second.NextDays && high < low =>
            $"The same air temperature cannot be at or above {Shown(low)} and at or below less than that.",
        (GrowthPotentialCondition { Passing: Passing.RisesAbove } low, GrowthPotentialCondition { Passing: Passing.FallsBelow } high)
            when high.Turf == low.Turf && high.MeanOverDays == low.MeanOverDays && high.OfPeak is null == low.OfPeak is null && high.Share < low.Share =>
            "The same growth cannot be at least one share and at most less than that.",
        (RainCondition { AtLeast: { } low } first, RainCondition { AtMost: { } high } second)
            when first.Days == second.Days && first.IsAhead == second.IsAhead && high.Millimetres < low.Millimetres =>
            "The same rain cannot be at least one amount and at most less than that.",
        (RootZoneDepletionCondition { Passing: Passing.RisesAbove } low, RootZoneDepletionCondition { Passing: Passing.FallsBelow } high)
            when high.Turf == low.Turf && high.ShareOfAllowed < low.ShareOfAllowed =>
            "The same root zone cannot lack at least one share and at most less than that.",
        (SinceTreatment { AtLeastDays: { } low } first, SinceTreatment { AtMostDays: { } high } second) when first.Treatment == second.Treatment && high < low =>
            "The same record cannot lie at least so many days back and at most fewer.",
        _ => null,
    };

    private static string Shown(Temperature temperature) => Wording.Temperature(temperature, ReadersUnits.Metric);

    /// <summary>The turf that a condition looks at although the treatment is for other turf, so that its season never comes; null where there is none.</summary>
    public static TurfType? OtherTurf(Condition condition, IReadOnlyCollection<TurfType> turf) => condition.AndItsParts()
        .Select(part => part switch
        {
            GrowthPotentialCondition growth => growth.Turf,
            DaysBeforeGrowthFalls falls => falls.Turf,
            RootZoneDepletionCondition roots => roots.Turf,
            _ => (TurfType?)null,
        })
        .FirstOrDefault(each => each is { } looked && !turf.Contains(looked));

    /// <summary>A circle in what must be recorded before what, beginning and ending with the treatment; null where there is none.</summary>
    /// <param name="start">The treatment's id.</param>
    /// <param name="openings">What opens each treatment, by its id.</param>
    public static IReadOnlyList<string>? Circle(string start, IReadOnlyDictionary<string, Condition> openings)
    {
        var way = new List<string> { start };
        return Follow(start, start, openings, way) ? way : null;
    }

    private static bool Follow(string from, string start, IReadOnlyDictionary<string, Condition> openings, List<string> way)
    {
        if (!openings.TryGetValue(from, out Condition? opens)) return false;
        foreach (string needed in opens.NeededRecords)
        {
            way.Add(needed);
            if (needed == start) return true;
            if (way.IndexOf(needed) == way.Count - 1 && Follow(needed, start, openings, way)) return true;
            way.RemoveAt(way.Count - 1);
        }

        return false;
    }
}
