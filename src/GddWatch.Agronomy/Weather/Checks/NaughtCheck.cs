using GddWatch.Agronomy.Treatments;

namespace GddWatch.Agronomy.Weather.Checks;

/// <summary>
/// Doubts the minimum and the maximum of a day on which both are exactly 0 °C, or both 0 °F: a zero that somebody wrote for "not known".
/// <para>Tn = Tx and (Tx = 0 °C or |Tx − (−17.78 °C)| &lt; 0.05 °C).</para>
/// <para>The publication asks for 0 °F in the United States and for 0 °C elsewhere. Here both pairs are doubted everywhere: what a feed's keeper wrote zero in
/// is not told by the country, and a day without any daily range at exactly one of the two is hardly ever real.</para>
/// <para>A day that lacks one of the two is not judged. Known on the day itself.</para>
/// <para>Source: Durre, Menne, Gleason, Houston and Vose 2010, Comprehensive automated quality assurance of daily surface observations,
/// J. Appl. Meteorol. Climatol. 49:1615-1633; thresholds SEEN in an open implementation.</para>
/// </summary>
internal static class NaughtCheck
{
    private const double ZeroFahrenheitC = -160.0 / 9.0;

    // Archives round 0 °F to −17.8 °C.
    private const double RoundingC = 0.05;

    public static void Judge(CheckedValues values, int today)
    {
        double minimumC = values.Measured(WeatherVariable.MinimumAirC, today);
        double maximumC = values.Measured(WeatherVariable.MaximumAirC, today);
        if (minimumC != maximumC || (maximumC != 0 && Math.Abs(maximumC - ZeroFahrenheitC) >= RoundingC)) return;
        string scale = maximumC == 0 ? "0 °C" : "0 °F";
        string why = $"The minimum and the maximum of {Wording.Day(values.DayAt(today))} are both exactly {scale}, which is what is often written where a value is missing.";
        foreach (WeatherVariable variable in CheckedValues.Variables) values.Doubt(QualityCheck.Naught, variable, today, today, why);
    }
}
