namespace GddWatch.Validation.Dates;

/// <summary>When a passage counts: on so many of the last days, and a slower mean that is not far behind.</summary>
/// <param name="Name">In words.</param>
/// <param name="DaysPast">On how many of the last days the 5-day mean must be past the threshold.</param>
/// <param name="OfDays">Of how many last days.</param>
/// <param name="SlowMeanDays">Length of the slower mean [days].</param>
/// <param name="SlackC">By how much the slower mean may still be short [°C]; infinite where it is not asked.</param>
internal sealed record HoldingRule(string Name, int DaysPast, int OfDays, int SlowMeanDays, double SlackC)
{
    public static HoldingRule FirstDay { get; } = new("first day it passes", 1, 1, 15, double.PositiveInfinity);

    /// <summary>The rule by which the overseeding opens and windows close.</summary>
    public static HoldingRule ThreeOfFive { get; } = new("3 of 5 days", 3, 5, 15, double.PositiveInfinity);

    public static HoldingRule ThreeInARow { get; } = new("3 days in a row", 3, 3, 15, double.PositiveInfinity);

    public static HoldingRule FiveInARow { get; } = new("5 days in a row", 5, 5, 15, double.PositiveInfinity);

    public static HoldingRule TenInARow { get; } = new("10 days in a row", 10, 10, 15, double.PositiveInfinity);

    /// <summary>Of the rules that ask the soil alone, the one that brings estimate and measurement closest; the spring pre-emergent asks the air too (window-report).</summary>
    public static HoldingRule Recommended { get; } = new("3 days in a row and 15-day mean within 2 °C", 3, 3, 15, 2);

    /// <summary>Whether a treatment uses it.</summary>
    public bool InUse => this == ThreeOfFive;
}
