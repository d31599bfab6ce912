using System.Globalization;
using GddWatch.Feeds.Faults;

namespace GddWatch.Commands.Recording;

/// <summary>Faults of what was typed on a command line.</summary>
internal static class TypedFaults
{
    /// <summary>Says all of them, and that nothing was recorded.</summary>
    public static int Tell(Terminal terminal, IEnumerable<EntryFault> faults)
    {
        terminal.Error.WriteLine("Nothing was recorded:");
        foreach (EntryFault fault in faults.Distinct()) terminal.Error.WriteLine($"  {AsFault(fault)}");
        return ExitCode.WrongUsageOrConfiguration;
    }

    /// <summary>The number of an entry; null where none is written or where it is none.</summary>
    public static long? Number(string part, string? written, List<EntryFault> faults)
    {
        if (written is null) return null;
        if (long.TryParse(written, NumberStyles.None, CultureInfo.InvariantCulture, out long number)) return number;
        faults.Add(new EntryFault(part, written, "This is not the number of an entry.", "a whole number that `gddwatch record list` shows, such as 12"));
        return null;
    }

    // Said as every other fault is: where a file's would name its line, one of the command line names the option or, in capitals, the word.
    private static Fault AsFault(EntryFault fault) => new()
    {
        Severity = FaultSeverity.Refused,
        File = fault.Part is "treatment" or "what" or "number" or "file" ? fault.Part.ToUpperInvariant() : $"--{fault.Part}",
        Found = string.IsNullOrEmpty(fault.Found) ? null : fault.Found,
        Problem = fault.Problem,
        Accepted = $"{fault.Accepted}.",
    };
}
