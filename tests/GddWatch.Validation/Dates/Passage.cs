namespace GddWatch.Validation.Dates;

/// <summary>A passage that windows wait for: the 5-day mean of the soil temperature passes a threshold.</summary>
internal sealed record Passage(string Name, double ThresholdC, bool Rises)
{
    public static IReadOnlyList<Passage> All { get; } =
    [
        new("rises past 10 °C", 10, true),
        new("rises past 12.8 °C", 12.8, true),
        new("rises past 18.3 °C", 18.3, true),
        new("falls past 24 °C", 24, false),
        new("falls past 21.1 °C", 21.1, false),
    ];

    /// <summary>The first day on which the passage is looked for.</summary>
    public DateOnly StartIn(int year) => Rises ? new DateOnly(year, 1, 2) : new DateOnly(year, 7, 20);

    /// <summary>The last one: a rise after the end of October would be of the next spring.</summary>
    public DateOnly EndIn(int year) => Rises ? new DateOnly(year, 10, 29) : new DateOnly(year, 12, 31);

    public bool IsPast(double valueC) => Rises ? valueC >= ThresholdC : valueC <= ThresholdC;

    /// <summary>Whether a slower mean is past the threshold or short of it by no more than a slack.</summary>
    public bool IsNear(double valueC, double slackC) => Rises ? valueC >= ThresholdC - slackC : valueC <= ThresholdC + slackC;
}
