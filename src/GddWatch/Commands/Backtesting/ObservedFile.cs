using System.Globalization;
using CsvHelper;
using GddWatch.Agronomy.Backtesting.Scores;
using GddWatch.Configuration.Yaml;
using GddWatch.Feeds.Faults;

namespace GddWatch.Commands.Backtesting;

/// <summary>
/// Reads observed dates from a CSV file with the columns site, event (or treatment), date and, where wanted, season and note. A row with a season and without a date says that somebody looked for it
/// and it did not come. A bad row does not cost the good ones theirs, and all faults are told at once.
/// </summary>
internal sealed class ObservedFile(string path, IReadOnlyList<string> sites)
{
    private static readonly string[] Known = ["site", "event", "treatment", "date", "season", "note"];
    private readonly CommaFile file = new(path, "list of dates");

    /// <summary>What is wrong in the file.</summary>
    public IReadOnlyList<Fault> Faults => file.Faults;

    /// <summary>The dates in the rows that are good.</summary>
    public IReadOnlyList<ObservedDate> Read()
    {
        if (file.ReadBytes() is not { } bytes) return [];
        var dates = new List<ObservedDate>();
        var lines = new Dictionary<ObservedDate, int>();
        using CsvReader reader = CsvReader.Create(bytes, file.Options());
        List<string>? header = null;
        while (reader.Read())
        {
            string[] cells = new string[reader.FieldCount];
            for (int i = 0; i < cells.Length; i++) cells[i] = reader.GetString(i).Trim();
            if (cells.All(cell => cell.Length == 0)) continue;
            int line = (int)reader.LineNumber;
            if (header is null)
            {
                header = [.. cells];
                if (!IsHeader(header, line)) return [];
            }
            else if (cells.Length != header.Count)
            {
                file.AddWrongNumberOfCells(line, header, cells);
            }
            else if (ReadRow(header, cells, line) is { } date)
            {
                if (lines.TryAdd(date, line)) dates.Add(date);
                else Add(line, null, string.Join(',', cells), $"The row says the same as line {lines[date]}.", "each sighting once; the first of the two is used");
            }
        }

        if (header is null && Faults.Count == 0) Add(null, null, null, "The file is empty.", "a header such as site,event,date and a row for each date");
        return dates;
    }

    private ObservedDate? ReadRow(List<string> header, string[] cells, int line)
    {
        string Cell(string name) => header.IndexOf(name) is var place and >= 0 ? cells[place] : "";

        int before = Faults.Count;
        string site = Cell("site");
        if (!sites.Contains(site)) Add(line, "site", site, "There is no such site.", NearestWord.Hint(site, [.. sites]));
        string what = header.Contains("event") ? Cell("event") : Cell("treatment");
        if (what.Length == 0) Add(line, "event", null, "Nothing says what was seen.", "a treatment's id, or what was seen, such as first-seedlings");
        DateOnly? day = null;
        if (Cell("date") is { Length: > 0 } written)
        {
            if (DateOnly.TryParseExact(written, "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out DateOnly read)) day = read;
            else Add(line, "date", written, "This is not a day as it is written here.", "year, month and day with hyphens, such as 2026-04-12; empty, with a season, where it did not come");
        }

        int? season = null;
        if (Cell("season") is { Length: > 0 } year)
        {
            if (int.TryParse(year, NumberStyles.None, CultureInfo.InvariantCulture, out int number) && number is >= 1800 and <= 2200) season = number;
            else Add(line, "season", year, "This is not a year.", "the year in which the season begins, such as 2026");
        }

        if (day is null && season is null && Faults.Count == before) Add(line, "date", null, "There is no date, and no season in which it was looked for.", "a date; or a season alone, where somebody looked for it and it did not come");
        return Faults.Count > before ? null : new ObservedDate(site, what, season, day);
    }

    private bool IsHeader(List<string> header, int line)
    {
        foreach (string name in header.Where(name => !Known.Contains(name))) Add(line, name, name, "There is no such column.", NearestWord.Hint(name, Known));
        if (!header.Contains("site")) Add(line, "site", null, "The column site is missing.", "a header such as site,event,date");
        if (!header.Contains("date")) Add(line, "date", null, "The column date is missing.", "a header such as site,event,date");
        if (header.Contains("event") == header.Contains("treatment")) Add(line, "event", null, "What was seen needs one column.", "either event or treatment");
        return Faults.Count == 0;
    }

    private void Add(int? line, string? column, string? found, string problem, string accepted) => file.Add(line, column, found, problem, accepted);
}
