using System.Text;

namespace GddWatch.Feeds.Faults;

/// <summary>Something wrong in what a person or a source gave, said so that it can be put right. Never thrown: faults are gathered beside what was good.</summary>
public sealed record Fault
{
    /// <summary>How bad it is.</summary>
    public required FaultSeverity Severity { get; init; }

    /// <summary>The file, or the address of the source.</summary>
    public required string File { get; init; }

    /// <summary>The line, from 1; null where the whole file is meant.</summary>
    public int? Line { get; init; }

    /// <summary>The column by its name or its number from 1; null where the whole line is meant.</summary>
    public string? Column { get; init; }

    /// <summary>What is wrong, in a sentence.</summary>
    public required string Problem { get; init; }

    /// <summary>The text that was found; null where there is none to show.</summary>
    public string? Found { get; init; }

    /// <summary>What would be accepted, or what to do.</summary>
    public required string Accepted { get; init; }

    /// <summary>The fault as people read it: "file, line 3, column tmin_c: the problem. Found: "x". Accepted: y."</summary>
    public override string ToString()
    {
        var text = new StringBuilder(File);
        if (Line is { } line) text.Append($", line {line}");
        if (Column is { } column) text.Append($", column {column}");
        text.Append($": {Problem}");
        if (Found is { } found) text.Append($" Found: \"{Shorten(found)}\".");
        return text.Append($" Accepted: {Accepted}").ToString();
    }

    private static string Shorten(string found)
    {
        string plain = string.Concat(found.Select(each => char.IsControl(each) ? '\u00b7' : each));
        return plain.Length <= 60 ? plain : $"{plain[..60]}…";
    }
}
