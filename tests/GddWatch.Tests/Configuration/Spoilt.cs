using GddWatch.Configuration;
using GddWatch.Feeds.Faults;
using Xunit;

namespace GddWatch.Tests.Configuration;

/// <summary>
/// One fault in the small configuration: what is replaced by what, and what must be said of it. The sign ¦ in the spoilt text marks where the fault must
/// point, and is taken out.
/// </summary>
internal static class Spoilt
{
    private const char Mark = '¦';

    /// <summary>Checks that the spoilt file has exactly one fault, at the mark, with the text found, the problem and the remedy.</summary>
    public static void Holds(string file, string good, string marked, string? found, string problem, string accepted)
    {
        using var folder = new ConfigurationFolder();
        folder.Replace(file, good, marked);
        string text = folder.TextOf(file);
        int at = text.IndexOf(Mark);
        Assert.True(at >= 0, "The spoilt text carries no mark.");
        folder.Write(file, text.Remove(at, 1));
        int line = text[..at].Count(each => each == '\n') + 1;
        int column = at - text.LastIndexOf('\n', at);

        ConfigurationReading reading = folder.Read();

        Assert.Null(reading.Configuration);
        Assert.True(reading.Faults.Count == 1, $"Expected one fault: {string.Join('\n', reading.Faults)}");
        Fault fault = reading.Faults[0];
        Assert.Equal(folder.PathOf(file), fault.File);
        Assert.True(fault.Line == line && fault.Column == $"{column}", $"Expected line {line}, column {column}: {fault}");
        Assert.Equal(found, fault.Found);
        Assert.Contains(problem, fault.Problem);
        Assert.Contains(accepted, fault.Accepted);
        Assert.Equal(FaultSeverity.Refused, fault.Severity);
    }
}
