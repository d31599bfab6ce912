using GddWatch.Agronomy.Quantities;

namespace GddWatch.Agronomy.Weather.Filling;

/// <summary>Fills with what was forecast for the day.</summary>
public static class ForecastAsIssued
{
    /// <summary>A forecast made longer ahead is not taken [days].</summary>
    public const int LongestLeadDays = 7;

    private static readonly double[] ErrorsC = [1.8, 2.0, 2.3, 2.6, 3.0, 3.4, 3.8, 4.2];

    /// <summary>
    /// Gives the missing temperature as the latest forecast issued on or before the day had it, and its standard deviation.
    /// <para>Valid up to <see cref="LongestLeadDays"/> ahead: beyond, a forecast knows little more than the climate does. Null where no such forecast knows the
    /// temperature of the day. The value is not corrected for the site.</para>
    /// <para>Source of the errors, by days ahead from 0: the size usual in verifications of daily extremes against stations in the middle latitudes, a mean
    /// absolute error of 1.5 to 2 °C for tomorrow that about doubles within a week (MEMORY). They were not measured here, since no forecasts kept as issued were at hand.</para>
    /// </summary>
    /// <param name="forecasts">Forecasts in the order of their issue.</param>
    /// <param name="variable">The lowest or the highest air temperature.</param>
    /// <param name="day">The missing day.</param>
    /// <exception cref="ArgumentOutOfRangeException">The variable is no air temperature of the day.</exception>
    public static (double ValueC, double ErrorC)? Of(ReadOnlySpan<Forecast> forecasts, WeatherVariable variable, DateOnly day)
    {
        Reading.DemandAirTemperature(variable);
        for (int i = CountIssuedBy(forecasts, day) - 1; i >= 0; i--)
        {
            Forecast forecast = forecasts[i];
            int lead = day.DayNumber - forecast.IssuedOn.DayNumber;
            if (lead > LongestLeadDays) break;
            if (!forecast.Days.Holds(day)) continue;
            double valueC = forecast.Days.Column(variable)[forecast.Days.IndexOf(day)];
            if (!double.IsNaN(valueC)) return (valueC, ErrorsC[lead]);
        }

        return null;
    }

    /// <summary>The standard deviation of a forecast made so many days ahead [°C]; see <see cref="Of"/> for where it comes from.</summary>
    /// <param name="leadDays">How many days ahead [days], 0 to <see cref="LongestLeadDays"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">The lead is out of its range.</exception>
    public static double ErrorC(int leadDays) => ErrorsC[(int)Demand.Within(leadDays, 0, LongestLeadDays, "lead [days]")];

    private static int CountIssuedBy(ReadOnlySpan<Forecast> forecasts, DateOnly day)
    {
        int low = 0, high = forecasts.Length;
        while (low < high)
        {
            int middle = (low + high) / 2;
            if (forecasts[middle].IssuedOn <= day) low = middle + 1;
            else high = middle;
        }

        return low;
    }
}
