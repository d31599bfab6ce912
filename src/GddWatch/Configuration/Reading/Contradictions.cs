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
        Limit[] limits = [.. parts.SelectMany(Limit.In)];
        for (int i = 0; i < limits.Length; i++)
        {
            for (int j = i + 1; j < limits.Length; j++)
            {
                if (!limits[i].Excludes(limits[j])) continue;
                return $"It can never be met: it asks that {limits[i].Condition.Explain(ReadersUnits.Metric)}, and also that {limits[j].Condition.Explain(ReadersUnits.Metric)}.";
            }
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
