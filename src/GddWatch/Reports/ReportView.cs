namespace GddWatch.Reports;

/// <summary>A report as its template sees it: text and tables, nothing that has to be reckoned.</summary>
internal sealed record ReportView
{
    public required string Title { get; init; }

    public required string Region { get; init; }

    public required string Period { get; init; }

    public required string Remark { get; init; }

    /// <summary>What the report is and how it was made, a sentence or two each.</summary>
    public required IReadOnlyList<string> Introduction { get; init; }

    public required IReadOnlyList<TreatmentView> Treatments { get; init; }

    public required IReadOnlyList<SiteView> Sites { get; init; }

    /// <summary>What the words mean.</summary>
    public required IReadOnlyList<WordView> Words { get; init; }

    /// <summary>What must be kept in mind.</summary>
    public required IReadOnlyList<string> Cautions { get; init; }
}
