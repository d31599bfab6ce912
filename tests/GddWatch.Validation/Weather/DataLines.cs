namespace GddWatch.Validation.Weather;

/// <summary>Goes through the lines of a data file, so that a fault in one names the file and the line.</summary>
internal static class DataLines
{
    /// <summary>Hands each line that is not blank, cut into its fields, to a reader.</summary>
    public static void Each(string file, Func<string, string[]> cut, Action<string[]> read)
    {
        int number = 0;
        foreach (string line in File.ReadLines(file))
        {
            number++;
            if (string.IsNullOrWhiteSpace(line)) continue;
            try
            {
                read(cut(line));
            }
            catch (Exception fault) when (fault is FormatException or IndexOutOfRangeException)
            {
                throw new InvalidDataException($"{file}, line {number}: {fault.Message}", fault);
            }
        }
    }

    /// <summary>The same for a comma-separated file with a header; the reader gets the place of each column by its name.</summary>
    public static void EachRow(string file, Action<Func<string, string>> read)
    {
        string[]? header = null;
        Each(file, line => line.Split(','), cells =>
        {
            if (header is null)
            {
                header = cells;
                return;
            }

            read(name => Array.IndexOf(header, name) is var place and >= 0
                ? cells[place]
                : throw new FormatException($"the header has no column {name}."));
        });
    }
}
