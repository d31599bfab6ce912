using GddWatch.Agronomy.Soil;
using GddWatch.Validation.Scoring;

namespace GddWatch.Validation.Probes;

/// <summary>The days judged at one station with and without probe readings.</summary>
internal sealed class ProbeScore(bool isHumid)
{
    public bool IsHumid => isHumid;

    public long Days { get; private set; }

    public double SquaresBefore { get; private set; }

    public double SquaresAfter { get; private set; }

    public long Held { get; private set; }

    public long Readings { get; private set; }

    public long Doubted { get; private set; }

    public void AddReadings(IReadOnlyList<JudgedReading> judged)
    {
        Readings += judged.Count;
        Doubted += judged.Count(reading => reading.Verdict == ReadingVerdict.Doubted);
    }

    public void AddDay(double beforeC, double afterC, double deviationC)
    {
        if (double.IsNaN(beforeC) || double.IsNaN(afterC)) return;
        Days++;
        SquaresBefore += beforeC * beforeC;
        SquaresAfter += afterC * afterC;
        if (Math.Abs(afterC) <= SoilEstimate.EightyPercent * deviationC) Held++;
    }

    /// <summary>Root mean square error over all days of some stations together [°C].</summary>
    public static double Pooled(IEnumerable<ProbeScore> scores, Func<ProbeScore, double> squares) =>
        Math.Sqrt(scores.Sum(squares) / scores.Sum(score => score.Days));

    /// <summary>Mean of the stations' own errors [°C].</summary>
    public static double StationMean(IEnumerable<ProbeScore> scores, Func<ProbeScore, double> squares) =>
        scores.Where(score => score.Days > 0).Average(score => Math.Sqrt(squares(score) / score.Days));
}
