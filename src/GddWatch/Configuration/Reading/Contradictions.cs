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
        foreach (SoilTemperatureCondition low in parts.OfType<SoilTemperatureCondition>().Where(part => part.Passing == Passing.RisesAbove))
        {
            bool clashes = parts.OfType<SoilTemperatureCondition>().Any(high =>
                high.Passing == Passing.FallsBelow && high.Depth == low.Depth && high.MeanOverDays == low.MeanOverDays && high.Threshold < low.Threshold);
            if (clashes) return $"The same soil temperature cannot be at or above {Wording.Temperature(low.Threshold, ReadersUnits.Metric)} and at or below less than that.";
        }

        foreach (AirTemperatureCondition one in parts.OfType<AirTemperatureCondition>())
        {
            bool clashes = parts.OfType<AirTemperatureCondition>().Any(other =>
                other.Of == one.Of && other.MeanOverDays == one.MeanOverDays && other.NextDays == one.NextDays && other.Below is { } below && one.Above is { } above && below < above);
            if (clashes) return $"The same air temperature cannot be at or above {Wording.Temperature(one.Above!.Value, ReadersUnits.Metric)} and at or below less than that.";
        }

        return null;
    }

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
        foreach (SinceTreatment since in opens.AndItsParts().OfType<SinceTreatment>())
        {
            way.Add(since.Treatment);
            if (since.Treatment == start) return true;
            if (way.IndexOf(since.Treatment) == way.Count - 1 && Follow(since.Treatment, start, openings, way)) return true;
            way.RemoveAt(way.Count - 1);
        }

        return false;
    }
}
