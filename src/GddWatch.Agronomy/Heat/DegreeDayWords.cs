namespace GddWatch.Agronomy.Heat;

/// <summary>The words for methods and cutoffs in configuration, commands and notices.</summary>
public static class DegreeDayWords
{
    /// <summary>The word for a method.</summary>
    public static string Of(DegreeDayMethod method) => method switch
    {
        DegreeDayMethod.SimpleAverage => "simple average",
        DegreeDayMethod.AverageWithLimitedExtremes => "average with limited extremes",
        DegreeDayMethod.SingleSine => "single sine",
        DegreeDayMethod.DoubleSine => "double sine",
        DegreeDayMethod.SingleTriangle => "single triangle",
        DegreeDayMethod.DoubleTriangle => "double triangle",
        _ => throw new ArgumentOutOfRangeException(nameof(method), method, "This method has no word."),
    };

    /// <summary>The word for a cutoff.</summary>
    public static string Of(DegreeDayCutoff cutoff) => cutoff switch
    {
        DegreeDayCutoff.None => "none",
        DegreeDayCutoff.Horizontal => "horizontal",
        DegreeDayCutoff.Intermediate => "intermediate",
        DegreeDayCutoff.IntermediatePointwise => "intermediate pointwise",
        DegreeDayCutoff.Vertical => "vertical",
        _ => throw new ArgumentOutOfRangeException(nameof(cutoff), cutoff, "This cutoff has no word."),
    };
}
