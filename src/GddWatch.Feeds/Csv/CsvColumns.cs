using GddWatch.Agronomy.Weather;
using GddWatch.Feeds.Faults;

namespace GddWatch.Feeds.Csv;

/// <summary>Where the configured columns stand in a file, found by its header.</summary>
internal sealed class CsvColumns
{
    private const int LongestShown = 60;

    private CsvColumns(int count, int date, int site, IReadOnlyList<CsvColumn> variables)
    {
        Count = count;
        Date = date;
        Site = site;
        Variables = variables;
    }

    /// <summary>How many fields each line has.</summary>
    public int Count { get; }

    /// <summary>The place of the date.</summary>
    public int Date { get; }

    /// <summary>The place of the site's name, or −1.</summary>
    public int Site { get; }

    /// <summary>The variables; minimum and maximum come first.</summary>
    public IReadOnlyList<CsvColumn> Variables { get; }

    /// <summary>Finds the columns by exact name. Null where one is not there or not alone; all such faults are told at once.</summary>
    public static CsvColumns? Find(CsvFeedDefinition definition, IReadOnlyList<string> header, string file, int line, FaultList faults)
    {
        bool isWhole = true;
        int Place(string name)
        {
            int[] places = [.. Enumerable.Range(0, header.Count).Where(i => string.Equals(header[i], name, StringComparison.Ordinal))];
            if (places.Length == 1) return places[0];
            faults.Add(FaultKind.Header, places.Length == 0 ? NoColumn(definition, name, header, file, line) : Ambiguous(name, places, file, line));
            isWhole = false;
            return -1;
        }

        int date = Place(definition.DateColumn);
        int site = definition.SiteColumn is { } siteColumn ? Place(siteColumn.Name) : -1;
        List<CsvColumn> variables = [];
        foreach (WeatherVariable variable in Enum.GetValues<WeatherVariable>())
        {
            if (definition.Columns.TryGetValue(variable, out string? name)) variables.Add(CsvColumn.Of(definition, variable, name, Place(name)));
        }

        return isWhole ? new CsvColumns(header.Count, date, site, variables) : null;
    }

    private static Fault NoColumn(CsvFeedDefinition definition, string name, IReadOnlyList<string> header, string file, int line)
    {
        string accepted = $"one of the names in the header line: {string.Join(", ", header.Take(40).Select(Short))}{(header.Count > 40 ? ", …" : "")}.";
        if (NearestName.Of(name, header) is { } near) accepted = $"perhaps \"{Short(near)}\"; {accepted}";
        if (header.Count == 1 && OtherSeparator(header[0], definition.Separator) is { } other)
        {
            accepted = $"the header has one field only, so the separator is probably \"{other}\" (a tab is written \"\\t\"); {accepted}";
        }

        return new Fault { Severity = FaultSeverity.Refused, File = file, Line = line, Column = name, Problem = "The file has no column of this name.", Accepted = accepted };
    }

    private static string Short(string name) => name.Length <= LongestShown ? name : $"{name[..LongestShown]}…";

    private static Fault Ambiguous(string name, int[] places, string file, int line) => new()
    {
        Severity = FaultSeverity.Refused,
        File = file,
        Line = line,
        Column = name,
        Problem = $"The header has this name {places.Length} times, in fields {string.Join(", ", places.Select(place => place + 1))}.",
        Accepted = "a name that only one column has.",
    };

    private static string? OtherSeparator(string header, char separator)
    {
        foreach (char other in ";,\t|")
        {
            if (other != separator && header.Contains(other, StringComparison.Ordinal)) return other == '\t' ? "\\t" : other.ToString();
        }

        return null;
    }
}
