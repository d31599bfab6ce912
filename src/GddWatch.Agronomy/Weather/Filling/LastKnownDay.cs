using GddWatch.Agronomy.Quantities;

namespace GddWatch.Agronomy.Weather.Filling;

/// <summary>Fills short holes with the last known day.</summary>
public static class LastKnownDay
{
    /// <summary>How many days in a row are filled at most [days]. A longer hole stays a hole from its next day on.</summary>
    public const int LongestHoleDays = 5;

    /// <summary>
    /// Gives the series with each missing day's minimum and maximum air temperature taken from the last day that knew both, at most
    /// <paramref name="longestHoleDays"/> days in a row, and marked as filled.
    /// <para>As of a day it uses earlier days only, so that cutting the series later changes nothing before the cut.</para>
    /// <para>Valid for holes of a few days: weather persists for about that long. Days before the first known one stay missing.</para>
    /// <para>Source: persistence, the simplest forecast of general meteorology (MEMORY).</para>
    /// </summary>
    /// <param name="series">The series, NaN where a temperature [°C] is missing.</param>
    /// <param name="longestHoleDays">How long a hole may be filled [days], 0 or more.</param>
    /// <exception cref="ArgumentOutOfRangeException">The longest hole is negative.</exception>
    public static DailySeries Fill(DailySeries series, int longestHoleDays = LongestHoleDays)
    {
        ArgumentNullException.ThrowIfNull(series);
        Demand.AtLeast(longestHoleDays, 0, "longest hole [days]");
        ReadOnlySpan<double> minimum = series.MinimumAirC;
        ReadOnlySpan<double> maximum = series.MaximumAirC;
        double[]? filledMinimum = null;
        double[]? filledMaximum = null;
        Mark[]? minimumMarks = null;
        Mark[]? maximumMarks = null;
        int lastKnown = -1;
        for (int i = 0; i < series.Count; i++)
        {
            if (!double.IsNaN(minimum[i]) && !double.IsNaN(maximum[i]))
            {
                lastKnown = i;
                continue;
            }

            if (lastKnown < 0 || i - lastKnown > longestHoleDays) continue;
            filledMinimum ??= minimum.ToArray();
            filledMaximum ??= maximum.ToArray();
            minimumMarks ??= series.MinimumMarks.ToArray();
            maximumMarks ??= series.MaximumMarks.ToArray();
            filledMinimum[i] = minimum[lastKnown];
            filledMaximum[i] = maximum[lastKnown];
            minimumMarks[i] = Mark.Filled;
            maximumMarks[i] = Mark.Filled;
        }

        return filledMinimum is null
            ? series
            : series.WithAirTemperature(filledMinimum, filledMaximum!, minimumMarks!, maximumMarks!);
    }
}
