using GddWatch.Agronomy.Treatments;

namespace GddWatch.Agronomy.Weather.Checks;

/// <summary>
/// Doubts the minimum and the maximum of a day whose maximum is below its minimum.
/// <para>Tx &lt; Tn. The publication lets 1 °C pass; here nothing does, since a heat sum of such a day has no meaning, however small the difference.</para>
/// <para>A day that lacks one of the two is not judged. Known on the day itself.</para>
/// <para>Source: Durre et al. 2010, J. Appl. Meteorol. Climatol. 49:1615-1633; rule without the buffer SEEN in an open implementation.</para>
/// </summary>
internal static class InternalCheck
{
    public static void Judge(CheckedValues values, int today)
    {
        double minimumC = values.SeenBy(QualityCheck.Internal, WeatherVariable.MinimumAirC, today);
        double maximumC = values.SeenBy(QualityCheck.Internal, WeatherVariable.MaximumAirC, today);
        if (!(maximumC < minimumC)) return;
        string why = $"The maximum of {Wording.Day(values.DayAt(today))}, {DoubtWords.Degrees(maximumC)}, is below the minimum, {DoubtWords.Degrees(minimumC)}.";
        foreach (WeatherVariable variable in CheckedValues.Variables) values.Doubt(QualityCheck.Internal, variable, today, today, why);
    }
}
