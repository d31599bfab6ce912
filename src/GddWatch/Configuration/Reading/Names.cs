using System.Text.RegularExpressions;
using GddWatch.Configuration.Yaml;

namespace GddWatch.Configuration.Reading;

/// <summary>Checks on the short plain names of sites and treatments, and on references to them.</summary>
public static partial class Names
{
    private const int Longest = 60;

    /// <summary>Faults an id that is not short and plain, or that stood earlier in the list.</summary>
    public static void CheckIds(IEnumerable<Placed<string>> ids, string what, FaultList faults)
    {
        var first = new Dictionary<string, Place>();
        foreach (Placed<string> id in ids)
        {
            if (id.Value.Length > Longest || !PlainId().IsMatch(id.Value))
            {
                faults.Add(id.Place, $"This id of a {what} is not short and plain.", $"lower-case letters a to z, digits and single hyphens between them, at most {Longest}, such as north-common");
            }

            if (!first.TryAdd(id.Value, id.Place))
            {
                faults.Add(id.Place, $"The {what} \"{id.Value}\" is there twice, first in line {first[id.Value].Line}.", "an id of its own for each");
            }
        }
    }

    /// <summary>Faults names in a list that nothing is called by; where the known ones cannot be read, nothing is said.</summary>
    public static void CheckReferences(IEnumerable<Placed<string>> names, IReadOnlyList<string>? known, string what, FaultList faults)
    {
        if (known is null) return;
        foreach (Placed<string> name in names)
        {
            if (known.Contains(name.Value)) continue;
            faults.Add(name.Place, $"There is no {what} \"{name.Value}\".", NearestWord.Hint(name.Value, [.. known]));
        }
    }

    /// <summary>Faults entries of a list that stand in it twice.</summary>
    public static void CheckOnce<T>(IEnumerable<Placed<T>> entries, FaultList faults)
        where T : notnull
    {
        var seen = new HashSet<T>();
        foreach (Placed<T> entry in entries)
        {
            if (!seen.Add(entry.Value)) faults.Add(entry.Place, $"\"{entry.Place.Text}\" stands twice in this list.", "each entry once");
        }
    }

    [GeneratedRegex("^[a-z0-9]+(-[a-z0-9]+)*$", RegexOptions.ExplicitCapture, 1000)]
    private static partial Regex PlainId();
}
