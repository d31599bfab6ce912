using System.Globalization;
using GddWatch.Agronomy.Treatments;

namespace GddWatch.Agronomy.Weather.Checks;

/// <summary>
/// Doubts a value that is far from what the neighbours let expect.
/// <para>For each neighbour within <see cref="FarthestKm"/> a straight line T = a + b·N by least squares over the <see cref="WindowDays"/> days before, where at least
/// <see cref="LeastCommonDays"/> are known in both, and its index of agreement d = 1 − Σ|N − T|/Σ(|N − m| + |T − m|), with m the mean of T. The estimate of a day is
/// the mean, weighted by d, of the lines of the 3 to 7 neighbours with the greatest d, each at that of its values of the days −1, 0 and +1 which lies nearest to T
/// (stations are read at different hours). Doubted where |residual| ≥ <see cref="LeastResidualC"/> and it is at least <see cref="LeastDeviations"/> standard deviations of the
/// residuals of the days before from their mean, and those days' estimates correlate with T by r ≥ <see cref="LeastCorrelation"/>.</para>
/// <para>The publication takes the month and 15 days on either side; of these the days before are known. On day D the neighbours' day D+1 is not known: the doubt is
/// judged again on D+1 and cleared where it no longer holds. With fewer neighbours or days there is no doubt. The neighbours are taken as they are given.</para>
/// <para>Source: Durre et al. 2010, J. Appl. Meteorol. Climatol. 49:1615-1633; thresholds, lines and weights SEEN in an open implementation.</para>
/// </summary>
internal sealed class SpatialRegressionCheck
{
    /// <summary>How far away a neighbour may be [km].</summary>
    public const double FarthestKm = 75.0;

    /// <summary>How many days before are compared [days].</summary>
    public const int WindowDays = 60;

    /// <summary>How many of them must be known in both places [days].</summary>
    public const int LeastCommonDays = 40;

    /// <summary>How far from the estimate a value is doubted [°C].</summary>
    public const double LeastResidualC = 8.0;

    /// <summary>How many standard deviations of the usual residual it must be.</summary>
    public const double LeastDeviations = 4.0;

    /// <summary>How well the estimate must have followed the site.</summary>
    public const double LeastCorrelation = 0.8;

    private const int LeastNeighbours = 3;
    private const int MostNeighbours = 7;

    private readonly CheckedValues values;
    private readonly Neighbour[][] neighbours;
    private readonly SlidingLines[] sliding;
    private readonly List<NeighbourLine> lines = [];

    public SpatialRegressionCheck(CheckedValues values, IReadOnlyList<NeighbourSeries> neighbours)
    {
        this.values = values;
        NeighbourSeries[] near = [.. neighbours.Where(neighbour => neighbour.DistanceKm <= FarthestKm)];
        DateOnly first = values.DayAt(0);
        this.neighbours = [.. CheckedValues.Variables.ToArray().Select(variable => near.Select(neighbour => new Neighbour(neighbour.Series, variable, first)).ToArray())];
        sliding = [.. CheckedValues.Variables.ToArray().Select(variable => new SlidingLines(values, variable, this.neighbours[(int)variable]))];
    }

    /// <summary>
    /// Clears or leaves yesterday's doubts and judges today, and yesterday again where a check before this one cleared a value of it. Tells whether a value of
    /// yesterday was cleared, here or before.
    /// </summary>
    public bool Judge(int today, bool yesterdayWasCleared)
    {
        if (neighbours[0].Length < LeastNeighbours) return yesterdayWasCleared;
        bool anyCleared = yesterdayWasCleared;
        foreach (WeatherVariable variable in CheckedValues.Variables)
        {
            if (values.IsDoubted(QualityCheck.SpatialRegression, variable, today - 1) && Suspicion(variable, today - 1, today) is null)
            {
                values.Clear(QualityCheck.SpatialRegression, variable, today - 1, today);
                anyCleared = true;
            }

            if (yesterdayWasCleared) JudgeDay(variable, today - 1, today);
            JudgeDay(variable, today, today);
        }

        return anyCleared;
    }

    private void JudgeDay(WeatherVariable variable, int index, int today)
    {
        if (Suspicion(variable, index, today) is not { } suspicion) return;
        DateOnly day = values.DayAt(index);
        string side = suspicion.ResidualC > 0 ? "above" : "below";
        string times = Math.Abs(suspicion.Deviations).ToString("0.0", CultureInfo.InvariantCulture);
        values.Doubt(
            QualityCheck.SpatialRegression, variable, index, today,
            $"{DoubtWords.Subject(variable, day, values.Measured(variable, index))} is {DoubtWords.Difference(Math.Abs(suspicion.ResidualC))} {side} what {suspicion.Neighbours} neighbours within {FarthestKm.ToString(CultureInfo.InvariantCulture)} km let expect, {times} times the usual difference of the {Wording.Days(WindowDays)} before.");
    }

    private SpatialSuspicion? Suspicion(WeatherVariable variable, int index, int today)
    {
        double valueC = values.SeenBy(QualityCheck.SpatialRegression, variable, index);
        if (double.IsNaN(valueC)) return null;
        // The weights are not negative, since |N − T| ≤ |N − m| + |T − m|, so that the estimate lies among those of the lines: where none of them is far, neither is it, and nearly all days end here.
        if (index == today && !sliding[(int)variable].MayBeFar(valueC, today)) return null;
        FitLines(variable, index);
        if (lines.Count < LeastNeighbours) return null;
        double residualC = valueC - EstimateC(valueC, index, today, out int used);
        if (!(Math.Abs(residualC) >= LeastResidualC)) return null;
        PairedMoments moments = new();
        for (int i = index - WindowDays; i < index; i++)
        {
            double beforeC = values.PassedBy(QualityCheck.SpatialRegression, variable, i);
            double estimateC = EstimateC(beforeC, i, today, out _);
            if (!double.IsNaN(beforeC) && !double.IsNaN(estimateC)) moments.Add(beforeC, estimateC);
        }

        if (moments.Count < LeastCommonDays || !(moments.Correlation >= LeastCorrelation)) return null;
        double deviations = (residualC - moments.MeanDifference) / moments.DeviationOfDifference;
        return Math.Abs(deviations) >= LeastDeviations ? new SpatialSuspicion(residualC, deviations, used) : null;
    }

    private void FitLines(WeatherVariable variable, int index)
    {
        lines.Clear();
        foreach (Neighbour neighbour in neighbours[(int)variable])
        {
            PairedMoments moments = new();
            for (int i = index - WindowDays; i < index; i++)
            {
                double ownC = values.PassedBy(QualityCheck.SpatialRegression, variable, i);
                double theirC = neighbour.At(i);
                if (!double.IsNaN(ownC) && !double.IsNaN(theirC)) moments.Add(ownC, theirC);
            }

            if (moments.Count < LeastCommonDays || !(moments.VarianceOfSecond > 0)) continue;
            double apart = 0;
            double room = 0;
            for (int i = index - WindowDays; i < index; i++)
            {
                double ownC = values.PassedBy(QualityCheck.SpatialRegression, variable, i);
                double theirC = neighbour.At(i);
                if (double.IsNaN(ownC) || double.IsNaN(theirC)) continue;
                apart += Math.Abs(theirC - ownC);
                room += Math.Abs(theirC - moments.MeanOfFirst) + Math.Abs(ownC - moments.MeanOfFirst);
            }

            double slope = moments.Covariance / moments.VarianceOfSecond;
            lines.Add(new NeighbourLine(neighbour, moments.MeanOfFirst - (slope * moments.MeanOfSecond), slope, 1 - (apart / room)));
        }

        lines.Sort((left, right) => right.Agreement.CompareTo(left.Agreement));
    }

    private double EstimateC(double valueC, int index, int today, out int used)
    {
        double sum = 0;
        double weights = 0;
        used = 0;
        foreach (NeighbourLine line in lines)
        {
            double nearestC = line.Neighbour.NearestTo(valueC, index, today);
            if (double.IsNaN(nearestC)) continue;
            sum += line.Agreement * (line.InterceptC + (line.Slope * nearestC));
            weights += line.Agreement;
            if (++used == MostNeighbours) break;
        }

        return used >= LeastNeighbours && weights > 0 ? sum / weights : double.NaN;
    }

    private readonly record struct NeighbourLine(Neighbour Neighbour, double InterceptC, double Slope, double Agreement);

    private readonly record struct SpatialSuspicion(double ResidualC, double Deviations, int Neighbours);
}
