using GddWatch.Agronomy.Heat;
using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Treatments;
using GddWatch.Agronomy.Windows;

namespace GddWatch.Agronomy.Changes;

/// <summary>Makes the data of a bulletin's chart.</summary>
internal static class BulletinCharts
{
    /// <summary>How many days are drawn [days].</summary>
    private const int Days = 70;

    private static readonly Depth FiveCentimetres = Depth.FromCentimetres(5);

    private static readonly HeatSumDefinition HeatOfTheAir = new(
        Quantities.Temperature.FromCelsius(10), null, DegreeDayMethod.SimpleAverage, DegreeDayCutoff.None, AnnualDay.Of(1, 1));

    /// <summary>The chart of a site up to a day; null where the soil is not known on it.</summary>
    public static BulletinChart? Of(SiteMetrics metrics, DateOnly day, ReadersUnits units)
    {
        double[] soil = metrics.SoilMeans(FiveCentimetres, 5);
        DateOnly last = day <= metrics.Series.LastDay ? day : metrics.Series.LastDay;
        int index = metrics.Series.IndexOf(last);
        if (index < Days || double.IsNaN(soil[index])) return null;
        bool us = units == ReadersUnits.UnitedStates;
        var days = new DateSpan(last.AddDays(1 - Days), last);
        ChartCurve soilCurve = ChartCurves.Of(metrics, soil, days, celsius => us ? celsius * 1.8 + 32 : celsius);
        ChartCurve heatCurve = ChartCurves.Of(metrics, metrics.HeatSumColumn(HeatOfTheAir), days, celsiusDays => us ? celsiusDays * 1.8 : celsiusDays);
        string usual = soilCurve.Low.Count == 0
            ? "too few earlier years are known for a usual range"
            : $"usual at this date are {Shown(soilCurve.Low[^1])} to {Shown(soilCurve.High[^1])} {(us ? "°F" : "°C")} in eight of ten years";
        string words = $"Soil at {Wording.Depth(FiveCentimetres, units)} on {Wording.Day(last)}: {Wording.Temperature(soil[index], units)} ({(metrics.SoilIsMeasured ? "measured" : "estimated")}, 5-day mean); {usual}. {HeatWords(metrics, index, units)}";
        return new BulletinChart(last, us ? "°F" : "°C", us ? "°F-days" : "°C-days", soilCurve, heatCurve, words);
    }

    private static string HeatWords(SiteMetrics metrics, int index, ReadersUnits units)
    {
        double heat = metrics.HeatSumColumn(HeatOfTheAir)[index];
        return double.IsNaN(heat) ? "The heat of the air is not known." : $"Heat of the air since the year's start, base {Wording.Temperature(10, units)}: {Wording.Heat(heat, units)}.";
    }

    private static string Shown(double value) => Math.Round(value).ToString(System.Globalization.CultureInfo.InvariantCulture);
}
