namespace GddWatch.Reports;

/// <summary>A site's last year in the report.</summary>
internal sealed record SiteView(string Name, IReadOnlyList<ChartView> Charts, IReadOnlyList<TableView> Tables);
