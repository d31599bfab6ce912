namespace GddWatch.Agronomy.Weather.Checks;

/// <summary>
/// Doubts a minimum above the highest maximum that its calendar month ever had, and a maximum below the lowest minimum.
/// <para>Tn &gt; max Tx, or Tx &lt; min Tn, over the calendar month of all earlier years.</para>
/// <para>Judges only with at least <see cref="LeastValues"/> values and <see cref="EarlierYears.LeastYears"/> earlier years that know half of the month. A missing
/// value is not judged. Known on the day itself.</para>
/// <para>Source: Durre et al. 2010, J. Appl. Meteorol. Climatol. 49:1615-1633; thresholds SEEN in an open implementation.</para>
/// </summary>
internal static class MegaconsistencyCheck
{
    /// <summary>How many values of the other variable a judgement needs [values].</summary>
    public const int LeastValues = 140;

    public static void Judge(CheckedValues values, EarlierYears years, int index, int today)
    {
        int month = values.MonthAt(index);
        foreach (WeatherVariable variable in CheckedValues.Variables)
        {
            bool isMinimum = variable == WeatherVariable.MinimumAirC;
            WeatherVariable other = isMinimum ? WeatherVariable.MaximumAirC : WeatherVariable.MinimumAirC;
            double valueC = values.SeenBy(QualityCheck.Megaconsistency, variable, index);
            MonthRecord record = years.Month(other, month);
            if (double.IsNaN(valueC) || record.Years < EarlierYears.LeastYears || record.Count < LeastValues) continue;
            double limitC = isMinimum ? record.HighestC : record.LowestC;
            if (isMinimum ? valueC <= limitC : valueC >= limitC) continue;
            string relation = isMinimum ? "is above the highest maximum" : "is below the lowest minimum";
            values.Doubt(
                QualityCheck.Megaconsistency, variable, index, today,
                $"{DoubtWords.Subject(variable, values.DayAt(index), valueC)} {relation} of {DoubtWords.Month(month)} in {record.Years} earlier years, {DoubtWords.Degrees(limitC)}.");
        }
    }
}
