namespace GddWatch.Reports;

/// <summary>A table; the first cell of each row names it.</summary>
internal sealed record TableView(string Caption, IReadOnlyList<string> Columns, IReadOnlyList<RowView> Rows, IReadOnlyList<string> Notes);
