namespace GddWatch.Reports;

/// <summary>A treatment in the report.</summary>
internal sealed record TreatmentView
{
    public required string Id { get; init; }

    public required string Name { get; init; }

    /// <summary>When it is looked for, what opens it and what closes it, a sentence each.</summary>
    public required IReadOnlyList<string> Rules { get; init; }

    /// <summary>What the figures come to, a sentence each.</summary>
    public required IReadOnlyList<string> Findings { get; init; }

    /// <summary>The charts of dates; none where it never opened.</summary>
    public required IReadOnlyList<ChartView> Charts { get; init; }

    public required IReadOnlyList<TableView> Tables { get; init; }

    /// <summary>The heading over what other values would change.</summary>
    public required string WhatIfTitle { get; init; }

    /// <summary>The charts of what another value would change.</summary>
    public required IReadOnlyList<ChartView> WhatIfCharts { get; init; }

    public required IReadOnlyList<TableView> WhatIfTables { get; init; }
}
