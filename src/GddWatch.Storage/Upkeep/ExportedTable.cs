namespace GddWatch.Storage.Upkeep;

/// <summary>A table as it is exported.</summary>
/// <param name="Name">Its name, which is also that of its file.</param>
/// <param name="Words">What stands in it.</param>
/// <param name="Columns">Its columns.</param>
/// <param name="Select">The statement that gives them in this order.</param>
public sealed record ExportedTable(string Name, string Words, IReadOnlyList<ExportedColumn> Columns, string Select);
