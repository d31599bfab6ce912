using System.Globalization;
using System.Text;
using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Windows;

namespace GddWatch.Commands.Output;

/// <summary>Rows that programs read, the same as CSV and as JSON.</summary>
/// <param name="Name">What the table is called in JSON and by <c>--table</c>.</param>
/// <param name="Columns">The names of the columns.</param>
/// <param name="Rows">The rows: text, whole and other numbers, days, yes or no, reasons, or null.</param>
internal sealed record ProgramTable(string Name, IReadOnlyList<string> Columns, IEnumerable<IReadOnlyList<object?>> Rows)
{
    private const int Decimals = 4;

    public void WriteCsv(TextWriter output) => ProgramText.WriteCsv(output, Columns, Rows.Select(Cells));

    /// <summary>The rows as CSV without the names of the columns.</summary>
    public StringBuilder RowsInCsv() => ProgramText.RowsInCsv(Rows.Select(Cells));

    /// <summary>The rows as objects for JSON.</summary>
    public IEnumerable<IReadOnlyDictionary<string, object?>> AsObjects() => Rows.Select(row =>
    {
        var named = new OrderedDictionary<string, object?>();
        for (int i = 0; i < Columns.Count; i++) named.Add(Columns[i], Value(row[i]));
        return (IReadOnlyDictionary<string, object?>)named;
    });

    private static string?[] Cells(IReadOnlyList<object?> row)
    {
        var cells = new string?[row.Count];
        for (int i = 0; i < cells.Length; i++) cells[i] = Text(row[i]);
        return cells;
    }

    private static object? Value(object? cell) => cell switch
    {
        DateOnly day => Dates.Iso(day),
        Because why => why.Sentence(ReadersUnits.Metric),
        double number => double.IsFinite(number) ? Math.Round(number, Decimals) : null,
        _ => cell,
    };

    private static string? Text(object? cell) => Value(cell) switch
    {
        null => null,
        string text => text,
        bool truth => truth ? "true" : "false",
        double number => number.ToString(CultureInfo.InvariantCulture),
        int number => number.ToString(CultureInfo.InvariantCulture),
        { } other => other.ToString(),
    };
}
