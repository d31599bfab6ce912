namespace GddWatch.Validation.Probes;

/// <summary>When somebody reads a soil thermometer.</summary>
/// <param name="Name">In words.</param>
/// <param name="DaysBefore">How many days before the judged days each reading is taken.</param>
/// <param name="NoiseC">Standard deviation of what the reader adds by chance [°C]; 0 for the measured daily mean itself.</param>
internal sealed record ProbePlan(string Name, IReadOnlyList<int> DaysBefore, double NoiseC)
{
    /// <summary>The plan that the goal speaks of.</summary>
    public static ProbePlan ThreeInThreeWeeks { get; } = new("three readings, 18, 11 and 4 days before", [18, 11, 4], 0);

    public static IReadOnlyList<ProbePlan> All { get; } =
    [
        ThreeInThreeWeeks,
        new("three readings, 21, 14 and 7 days before", [21, 14, 7], 0),
        new("one reading, 10 days before", [10], 0),
        new("three readings, 18, 11 and 4 days before, each off by 0.5 °C at random", [18, 11, 4], 0.5),
    ];
}
