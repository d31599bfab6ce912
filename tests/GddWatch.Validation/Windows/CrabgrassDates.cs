using GddWatch.Agronomy.Heat;
using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Windows;

namespace GddWatch.Validation.Windows;

/// <summary>
/// When crabgrass would come up, by measured soil and so by the same days whatever opens a window: what a spring pre-emergent has to be ahead of.
/// </summary>
/// <param name="SoilAt55">The first day of the first week of the year on all of whose days the 5-day mean at 5 cm was at 55 °F or above; null where there is none, or where a hole in the measurement before it may hide an earlier one.</param>
/// <param name="FirstEmergence">The day on which 42 °C-days above 12 °C are reached in the soil from the season's start; null where it is not known.</param>
internal readonly record struct CrabgrassDates(DateOnly? SoilAt55, DateOnly? FirstEmergence)
{
    /// <summary>The one treatment that has to be ahead of crabgrass.</summary>
    public const string Treatment = "spring-pre-emergent";

    /// <summary>How long the soil must have been at 55 °F [days]. Source: 54 °F for 7 days, Ohio State University (SEEN, science reference 3.1).</summary>
    public const int WeekDays = 7;

    private const int MeanDays = 5;

    private static readonly Depth AtFive = Depth.FromCentimetres(5);
    private static readonly Temperature FiftyFive = Temperature.FromFahrenheit(55);

    /// <summary>The earliest of three years' first emergence: 42 °C-days above 12 °C at 2.5 cm. Source: Fidanza, Dernoeden and Zhang 1996, Crop Science 36:990-996 (SEEN in summary); counted from 1 January: DESIGN.</summary>
    private static readonly HeatSumDefinition Emergence =
        new(Temperature.FromCelsius(12), null, DegreeDayMethod.SimpleAverage, DegreeDayCutoff.None, AnnualDay.Of(1, 1), AtFive);

    private const double EmergenceCelsiusDays = 42;

    /// <summary>The dates of a season.</summary>
    public static CrabgrassDates Of(StationWeather station, Window window)
    {
        SiteMetrics metrics = station.Measured;
        double[] means = metrics.SoilMeans(AtFive, MeanDays);
        double[] sums = metrics.HeatSumColumn(Emergence);
        int first = metrics.Series.IndexOf(window.Season.Span.First);
        int last = Math.Min(metrics.Series.IndexOf(window.Season.Span.Last), means.Length - 1);
        DateOnly? warm = null;
        DateOnly? emerged = null;
        bool isHidden = false;
        int run = 0;
        for (int i = Math.Max(first, 0); i <= last && (warm is null || emerged is null); i++)
        {
            run = means[i] >= FiftyFive.Celsius ? run + 1 : 0;
            // The first means of a record lack the days before it; that is not a hole.
            isHidden |= double.IsNaN(means[i]) && i >= MeanDays;
            if (run == WeekDays && !isHidden) warm ??= metrics.Series.DayAt(i - WeekDays + 1);
            if (sums[i] >= EmergenceCelsiusDays) emerged ??= metrics.Series.DayAt(i);
        }

        return new CrabgrassDates(warm, emerged);
    }
}
