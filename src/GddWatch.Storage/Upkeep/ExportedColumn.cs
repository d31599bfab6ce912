namespace GddWatch.Storage.Upkeep;

/// <summary>A column of an exported table.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Words">What stands in it, with its unit.</param>
public sealed record ExportedColumn(string Name, string Words);
