using MathNet.Numerics.Statistics;

namespace GddWatch.Validation.Windows;

/// <summary>How far apart the openings of many seasons lie.</summary>
/// <param name="Seasons">Seasons judged.</param>
/// <param name="Apart">Days apart in the seasons that are compared: both opened for certain, the measurement whole.</param>
/// <param name="ApartWithHoles">The same with the seasons in which the measurement has a hole.</param>
/// <param name="OnlyEstimated">Seasons with a whole measurement that opened by the estimate alone.</param>
/// <param name="OnlyMeasured">And by the measurement alone.</param>
internal sealed record OpeningFigures(int Seasons, double[] Apart, double[] ApartWithHoles, int OnlyEstimated, int OnlyMeasured)
{
    /// <summary>The figures of a list of seasons.</summary>
    public static OpeningFigures Of(IReadOnlyList<OpeningPair> pairs)
    {
        OpeningPair[] both = [.. pairs.Where(pair => pair.BothOpened)];
        OpeningPair[] one = [.. pairs.Where(pair => pair.OneOpened && pair.IsWhole)];
        return new OpeningFigures(
            pairs.Count,
            [.. both.Where(pair => pair.IsWhole).Select(pair => (double)pair.Apart)],
            [.. both.Select(pair => (double)pair.Apart)],
            one.Count(pair => pair.Estimated.FirstOpening is not null),
            one.Count(pair => pair.Measured.FirstOpening is not null));
    }

    public double Mean => Apart.Length == 0 ? double.NaN : Apart.Average();

    public double Median => Apart.Length == 0 ? double.NaN : Apart.Median();

    public double MeanWithHoles => ApartWithHoles.Length == 0 ? double.NaN : ApartWithHoles.Average();

    public double MedianWithHoles => ApartWithHoles.Length == 0 ? double.NaN : ApartWithHoles.Median();

    /// <summary>The share within so many days either way.</summary>
    public double Within(int days) => Apart.Length == 0 ? double.NaN : Apart.Count(each => each <= days) / (double)Apart.Length;
}
