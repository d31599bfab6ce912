using GddWatch.Agronomy.Treatments;

namespace GddWatch.Agronomy.Weather.Checks;

/// <summary>
/// Doubts values that stay the same for weeks, as those of a sensor that hangs.
/// <para>At least <see cref="LeastDays"/> equal values in a row. Missing and doubted values in between are passed over.</para>
/// <para>Known from the day of the twentieth equal value on, then for all of them; a further one on its own day.</para>
/// <para>Source: Durre et al. 2010, J. Appl. Meteorol. Climatol. 49:1615-1633; threshold SEEN in an open implementation.</para>
/// </summary>
internal sealed class StreakCheck(CheckedValues values)
{
    /// <summary>How many equal values in a row are doubted [values].</summary>
    public const int LeastDays = 20;

    private readonly List<int>[] runs = [[], []];

    /// <summary>The same check, to go on over other days.</summary>
    public StreakCheck In(CheckedValues other)
    {
        var check = new StreakCheck(other);
        for (int i = 0; i < runs.Length; i++) check.runs[i].AddRange(runs[i]);
        return check;
    }

    public void Judge(int today)
    {
        foreach (WeatherVariable variable in CheckedValues.Variables)
        {
            double valueC = values.SeenBy(QualityCheck.Streak, variable, today);
            if (double.IsNaN(valueC)) continue;
            List<int> run = runs[(int)variable];
            if (run.Count > 0 && values.Measured(variable, run[^1]) != valueC) run.Clear();
            run.Add(today);
            if (run.Count < LeastDays) continue;
            string why = $"The {DoubtWords.Name(variable)} is {DoubtWords.Degrees(valueC)} on {run.Count} known days in a row, from {Wording.Day(values.DayAt(run[0]))} to {Wording.Day(values.DayAt(today))}.";
            foreach (int index in run.Count == LeastDays ? run : [today]) values.Doubt(QualityCheck.Streak, variable, index, today, why);
        }
    }
}
