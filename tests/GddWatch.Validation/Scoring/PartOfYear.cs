namespace GddWatch.Validation.Scoring;

/// <summary>The months over which an error is taken.</summary>
internal sealed record PartOfYear(string Name, IReadOnlyList<int> Months)
{
    public static PartOfYear Year { get; } = new("year", [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12]);

    /// <summary>When windows open on rising soil.</summary>
    public static PartOfYear Spring { get; } = new("Feb-May", [2, 3, 4, 5]);

    /// <summary>When windows open on falling soil.</summary>
    public static PartOfYear LateSummer { get; } = new("Aug-Oct", [8, 9, 10]);

    public static IReadOnlyList<PartOfYear> Judged { get; } = [Year, Spring, LateSummer];

    public static IReadOnlyList<PartOfYear> EachMonth { get; } =
    [
        new("Jan", [1]), new("Feb", [2]), new("Mar", [3]), new("Apr", [4]), new("May", [5]), new("Jun", [6]),
        new("Jul", [7]), new("Aug", [8]), new("Sep", [9]), new("Oct", [10]), new("Nov", [11]), new("Dec", [12]),
    ];
}
