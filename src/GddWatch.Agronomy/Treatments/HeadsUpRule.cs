namespace GddWatch.Agronomy.Treatments;

/// <summary>When a heads-up is sent before a window opens.</summary>
/// <param name="WithinDays">Within how many days it must be likely to open [days].</param>
/// <param name="Chance">How likely, above 0 and below 1.</param>
/// <param name="AgainWhenMovedDays">It is told again when the day of an even chance has moved by so many days since it was told [days].</param>
public sealed record HeadsUpRule(int WithinDays, double Chance, int AgainWhenMovedDays)
{
    /// <summary>Two weeks ahead, when it is likelier than not: time to plan and to order; a week of moving is news. DESIGN.</summary>
    public static HeadsUpRule Usual { get; } = new(14, 0.6, 7);
}
