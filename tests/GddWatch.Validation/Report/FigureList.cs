using System.Globalization;

namespace GddWatch.Validation.Report;

/// <summary>Every figure of the report as one row each, for programs.</summary>
internal sealed class FigureList
{
    private readonly List<string> lines = ["table,series,group,part,measure,value,unit,count"];

    public void Add(string table, string series, string group, string part, string measure, double value, string unit, long count)
    {
        string[] words = [table, series, group, part, measure];
        string text = double.IsNaN(value) ? "" : value.ToString("0.####", CultureInfo.InvariantCulture);
        lines.Add($"{string.Join(',', words.Select(Quoted))},{text},{unit},{count}");
    }

    public string Csv() => string.Join('\n', lines) + "\n";

    private static string Quoted(string word) => word.Contains(',') || word.Contains('"') ? $"\"{word.Replace("\"", "\"\"")}\"" : word;
}
