using System.Globalization;
using GddWatch.Configuration.Yaml;
using GddWatch.Feeds.Faults;

namespace GddWatch.Configuration;

/// <summary>Gathers what is wrong in one file, so that a person can put all of it right in one go.</summary>
public sealed class FaultList(string file)
{
    private readonly List<Fault> faults = [];

    /// <summary>The faults so far, from the top of the file down.</summary>
    public IReadOnlyList<Fault> InOrder => [.. faults.OrderBy(fault => fault.Line ?? 0).ThenBy(fault => int.Parse(fault.Column ?? "0", CultureInfo.InvariantCulture))];

    /// <summary>How many there are.</summary>
    public int Count => faults.Count;

    /// <summary>Adds a fault about the text at a place.</summary>
    public void Add(Place place, string problem, string accepted) => Add(place, place.Text, problem, accepted);

    /// <summary>Adds a fault at a place, about another text than the one that begins there; null where something is absent.</summary>
    public void Add(Place place, string? found, string problem, string accepted) => faults.Add(new Fault
    {
        Severity = FaultSeverity.Refused,
        File = file,
        Line = place.Line,
        Column = place.Column.ToString(CultureInfo.InvariantCulture),
        Found = found,
        Problem = problem,
        Accepted = InASentence(accepted),
    });

    /// <summary>Adds a fault about the file as a whole.</summary>
    public void AddWhole(string problem, string accepted) =>
        faults.Add(new Fault { Severity = FaultSeverity.Refused, File = file, Problem = problem, Accepted = InASentence(accepted) });

    private static string InASentence(string text) => text.EndsWith('.') ? text : $"{text}.";
}
