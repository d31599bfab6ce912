namespace GddWatch.Validation.Dates;

/// <summary>When a passage counts: so many days in a row, and a slower mean that is not far behind.</summary>
/// <param name="Name">In words.</param>
/// <param name="DaysInARow">On how many days in a row the 5-day mean must be past the threshold.</param>
/// <param name="SlowMeanDays">Length of the slower mean [days].</param>
/// <param name="SlackC">By how much the slower mean may still be short [°C]; infinite where it is not asked.</param>
internal sealed record HoldingRule(string Name, int DaysInARow, int SlowMeanDays, double SlackC)
{
    public static HoldingRule ThreeInARow { get; } = new("3 days in a row", 3, 15, double.PositiveInfinity);

    public static HoldingRule FiveInARow { get; } = new("5 days in a row", 5, 15, double.PositiveInfinity);

    public static HoldingRule TenInARow { get; } = new("10 days in a row", 10, 15, double.PositiveInfinity);

    /// <summary>The rule that the treatments use.</summary>
    public static HoldingRule Recommended { get; } = new("3 days in a row and 15-day mean within 2 °C", 3, 15, 2);
}
