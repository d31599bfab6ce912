using System.Globalization;
using System.Text;

namespace GddWatch.Tests.Commands;

/// <summary>An invented smooth climate as CSV: mean 11 °C, amplitude 13 °C, range 12 °C, warmest on 15 July, with a ripple of 0.03 °C: no two years are the same anywhere.</summary>
internal static class SmoothWeather
{
    public static string Csv(DateOnly first, DateOnly last, Func<DateOnly, double>? anomalyC = null)
    {
        var csv = new StringBuilder("date,tmin,tmax,rain\n");
        for (DateOnly day = first; day <= last; day = day.AddDays(1))
        {
            double mean = MeanC(day) + (anomalyC?.Invoke(day) ?? 0);
            csv.Append(string.Create(CultureInfo.InvariantCulture, $"{day:yyyy-MM-dd},{mean - 6:0.00},{mean + 6:0.00},{(day.DayNumber % 3 == 0 ? 6 : 0)}\n"));
        }

        return csv.ToString();
    }

    /// <summary>The mean of a day without any anomaly [°C].</summary>
    public static double MeanC(DateOnly day) => 11 + 13 * Math.Sin(2 * Math.PI * (day.DayOfYear - 105) / 365) + 0.03 * Math.Sin(day.DayNumber);
}
