namespace GddWatch.Feeds.Faults;

/// <summary>What is said about whole files.</summary>
internal static class FileFaults
{
    public static Fault Missing(string name, string path) => Refused(
        name,
        Directory.Exists(Path.GetDirectoryName(path))
            ? "There is no such file in its folder."
            : "There is no such file, and the folder it should be in does not exist either.",
        "the path of a file, relative to the folder that holds the configuration folder, or from the root; capital and small letters count.");

    public static Fault IsAFolder(string name) => Refused(name, "This is a folder, not a file.", $"the path of a file; for all CSV files of a folder write \"{name}/\".");

    public static Fault NoFolder(string name) => Refused(name, "There is no such folder.", "the path of a folder that exists, ending in \"/\".");

    public static Fault NoCsvFiles(string name) => Refused(name, "The folder has no file whose name ends in .csv, .csv.gz or .zip.", "a folder with at least one .csv file.");

    public static Fault NoMatch(string name) => Refused(
        name, "No file matches this pattern.", "a path in which \"*\" stands for any text within one folder or file name; capital and small letters count.");

    public static Fault Unreadable(string name) => Refused(
        name, "The file cannot be opened.", "a file that this user may read and that no other program has locked; look at its permissions.");

    public static Fault TooLarge(string name, long bytes) => Refused(
        name, $"The file is too large: {bytes / 1_000_000:N0} MB.", "a file of up to 1,000 MB; split it by years or by stations and name the folder instead.");

    public static Fault Empty(string name) => Refused(name, "The file is empty.", "a header line and one line a day.");

    public static Fault NotText(string name) => Refused(
        name, "The file is not text: it has bytes that text never has, as a spreadsheet, a picture or an archive has.",
        "plain text in UTF-8; from a spreadsheet, save as CSV first.");

    public static Fault Unfinished(string name, int line, string tail) => new()
    {
        Severity = FaultSeverity.LeftOut,
        File = name,
        Line = line,
        Problem = "The last line has no line end and the file was changed just now, so it is probably still being written. The line is left out this time.",
        Found = tail,
        Accepted = "a line that ends with a line end; nothing to do where another program will finish it, since the next reading takes it.",
    };

    public static Fault NoDays(string name) => Refused(
        name, "The file has a header line but no day.", "at least one line with a date, a minimum and a maximum temperature.");

    public static Fault NoGoodDays(string name) => Refused(name, "No line of it can be used.", "at least one good line; the other faults say what is wrong.");

    public static Fault CannotSplit(string name, char separator) => Refused(
        name, $"The file cannot be split into fields at \"{separator}\" with the configured comment and separator.",
        "one plain character such as a comma, a semicolon or a tab, that neither comments nor quotes use.");

    public static Fault NotADateFormat(string name, string format) => Refused(
        name, $"The configured date format \"{format}\" does not hold a year, a month and a day.",
        "a form such as yyyy-MM-dd or dd.MM.yyyy; months are capital \"MM\", since \"mm\" is minutes.");

    private static Fault Refused(string name, string problem, string accepted) =>
        new() { Severity = FaultSeverity.Refused, File = name, Problem = problem, Accepted = accepted };
}
