namespace GddWatch.Reports;

/// <summary>A row of a table.</summary>
/// <param name="Name">What the row is about.</param>
/// <param name="Cells">The other cells.</param>
/// <param name="IsMarked">Whether it is set apart, as what is in use now.</param>
internal sealed record RowView(string Name, IReadOnlyList<string> Cells, bool IsMarked = false);
