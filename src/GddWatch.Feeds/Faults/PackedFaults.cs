namespace GddWatch.Feeds.Faults;

/// <summary>What is said about .gz and .zip files.</summary>
internal static class PackedFaults
{
    public static Fault NotOneFile(string name, IReadOnlyList<string> inside) => new()
    {
        Severity = FaultSeverity.Refused,
        File = name,
        Problem = inside.Count == 0
            ? "The zip file holds no file."
            : $"The zip file holds {inside.Count} files, and which one is meant cannot be known: {string.Join(", ", inside.Take(8))}{(inside.Count > 8 ? ", …" : "")}.",
        Accepted = "a zip file with one text file in it; unpack this one, and for several files name the folder.",
    };

    public static Fault Broken(string name, bool changedJustNow) => new()
    {
        Severity = FaultSeverity.Refused,
        File = name,
        Problem = changedJustNow
            ? "The packed file cannot be unpacked. It was changed just now, so it is probably still being written."
            : "The packed file cannot be unpacked: it is damaged, cut short, or not what the end of its name says.",
        Accepted = changedJustNow
            ? "a whole file; nothing to do where another program will finish it, since the next reading takes it."
            : "a whole .gz or .zip file; fetch it again, and look whether the name fits.",
    };

    public static Fault UnpacksTooLarge(string name, long mostBytes) => new()
    {
        Severity = FaultSeverity.Refused,
        File = name,
        Problem = $"The packed file becomes larger than {mostBytes / 1_000_000:N0} MB when unpacked.",
        Accepted = $"a file of up to {mostBytes / 1_000_000:N0} MB unpacked; split it by years or by stations and name the folder instead.",
    };

    public static Fault CutShort(string name, int line, string tail) => new()
    {
        Severity = FaultSeverity.LeftOut,
        File = name,
        Line = line,
        Problem = "The packed file ends in the middle of a line: it was cut short. The line is left out, the lines before are used.",
        Found = tail,
        Accepted = "a whole .gz file; fetch it again if no other program is writing it.",
    };

    public static Fault LengthDiffers(string name) => new()
    {
        Severity = FaultSeverity.Remark,
        File = name,
        Problem = "The length at the end of the packed file is not that of what came out of it. All lines that came out are used; days may be missing at the end.",
        Accepted = "a whole .gz file; nothing to do where it was put together from several.",
    };
}
