using GddWatch.Agronomy.Treatments;

namespace GddWatch.Agronomy.Weather.Checks;

/// <summary>
/// Doubts a value that stands out from the day before and the day after.
/// <para>|T(D) − T(D−1)| ≥ <see cref="LeastJumpC"/> and |T(D) − T(D+1)| ≥ <see cref="LeastJumpC"/>, the same sign not required.</para>
/// <para>On day D the day after is not known: the jump from the day before alone is a doubt, known from D. It is cleared on D+1 where that day is nearer; it
/// stays where that day confirms it, or is missing or doubted itself, since then nothing speaks for the value. Without a value on the day before there is no doubt.</para>
/// <para>Source: Durre et al. 2010, J. Appl. Meteorol. Climatol. 49:1615-1633; threshold SEEN in an open implementation.</para>
/// </summary>
internal sealed class SpikeCheck(CheckedValues values)
{
    /// <summary>How far from its neighbours a value is doubted [°C].</summary>
    public const double LeastJumpC = 25.0;

    // Differences of tenths of a degree are not exact in binary.
    private const double RoundingC = 1e-9;

    /// <summary>Clears or leaves yesterday's doubts and judges today. Tells whether a value of yesterday was cleared.</summary>
    public bool Judge(int today)
    {
        bool anyCleared = false;
        foreach (WeatherVariable variable in CheckedValues.Variables)
        {
            double valueC = values.SeenBy(QualityCheck.Spike, variable, today);
            if (double.IsNaN(valueC)) continue;
            if (values.IsDoubted(QualityCheck.Spike, variable, today - 1) && Math.Abs(valueC - values.Measured(variable, today - 1)) < LeastJumpC - RoundingC)
            {
                values.Clear(QualityCheck.Spike, variable, today - 1, today);
                anyCleared = true;
            }

            double beforeC = values.PassedBy(QualityCheck.Spike, variable, today - 1);
            if (!(Math.Abs(valueC - beforeC) >= LeastJumpC - RoundingC)) continue;
            DateOnly day = values.DayAt(today);
            string side = valueC > beforeC ? "above" : "below";
            values.Doubt(
                QualityCheck.Spike, variable, today, today,
                $"{DoubtWords.Subject(variable, day, valueC)} is {DoubtWords.Difference(Math.Abs(valueC - beforeC))} {side} that of {Wording.Day(day.AddDays(-1))}, {DoubtWords.Degrees(beforeC)}.");
        }

        return anyCleared;
    }
}
