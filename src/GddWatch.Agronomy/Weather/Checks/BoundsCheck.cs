namespace GddWatch.Agronomy.Weather.Checks;

/// <summary>
/// Doubts a temperature beyond what was ever measured on earth.
/// <para>T &lt; −89.4 °C or T &gt; 57.7 °C.</para>
/// <para>A missing value is not judged. Known on the day itself.</para>
/// <para>Source: Durre et al. 2010, J. Appl. Meteorol. Climatol. 49:1615-1633; thresholds SEEN in an open implementation.</para>
/// </summary>
internal static class BoundsCheck
{
    private const double LowestC = -89.4;
    private const double HighestC = 57.7;

    public static void Judge(CheckedValues values, int today)
    {
        foreach (WeatherVariable variable in CheckedValues.Variables)
        {
            double valueC = values.SeenBy(QualityCheck.Bounds, variable, today);
            if (valueC is not (< LowestC or > HighestC)) continue;
            string range = $"{DoubtWords.Degrees(LowestC)} to {DoubtWords.Degrees(HighestC)}";
            values.Doubt(QualityCheck.Bounds, variable, today, today, $"{DoubtWords.Subject(variable, values.DayAt(today), valueC)} is outside what was ever measured on earth, {range}.");
        }
    }
}
