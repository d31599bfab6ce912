using GddWatch.Agronomy.Heat;
using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Soil;
using GddWatch.Agronomy.Weather;
using GddWatch.Agronomy.Weather.Filling;

namespace GddWatch.Agronomy.Windows;

/// <summary>
/// Everything that conditions ask of a site's weather, as columns made once when first asked for. A pure function of the series: the columns kept here
/// are only remembered results. For one judging at a time, not shared between threads.
/// </summary>
public sealed class SiteMetrics
{
    private readonly Dictionary<Depth, SoilTemperatureColumns> soil = [];
    private readonly Dictionary<(Depth Depth, int Days), double[]> soilMeans = [];
    private readonly Dictionary<HeatSumDefinition, double[]> heatSums = [];

    private SiteMetrics(DailySeries series, Site site)
    {
        Series = series;
        Site = site;
        Climate = new SiteClimate(this);
    }

    /// <summary>The site's weather, holes filled where that is allowed.</summary>
    public DailySeries Series { get; }

    /// <summary>The site.</summary>
    public Site Site { get; }

    /// <summary>What is usual here, from earlier seasons.</summary>
    public SiteClimate Climate { get; }

    /// <summary>Whether the soil temperature is measured here rather than estimated.</summary>
    public bool SoilIsMeasured => Site.SoilTemperature == SoilSource.Measured;

    /// <summary>The metrics of a site's weather.</summary>
    public static SiteMetrics Of(DailySeries series, Site site)
    {
        ArgumentNullException.ThrowIfNull(series);
        ArgumentNullException.ThrowIfNull(site);
        return new SiteMetrics(LastKnownDay.Fill(series), site);
    }

    /// <summary>The last day with both temperatures from the source, or null where there is none.</summary>
    public DateOnly? WeatherThrough
    {
        get
        {
            for (int i = Series.Count - 1; i >= 0; i--)
            {
                if (Series.QualityAt(i) is { } mark && mark != Mark.Filled) return Series.DayAt(i);
            }

            return null;
        }
    }

    /// <summary>Daily mean soil temperature and deviation at a depth [°C].</summary>
    public SoilTemperatureColumns Soil(Depth depth)
    {
        if (soil.TryGetValue(depth, out SoilTemperatureColumns? known)) return known;
        SoilTemperatureColumns columns = SoilIsMeasured
            ? MeasuredSoil.At(Series, depth)
            : SoilTemperatureColumns.Estimate(LayeredTurfSoil.Default, Series, Site.Latitude, depth);
        soil.Add(depth, columns);
        return columns;
    }

    /// <summary>Mean soil temperature over the days that end on a day [°C]; NaN where one of them is not known.</summary>
    public double SoilMeanAt(Depth depth, int days, DateOnly day)
    {
        if (!soilMeans.TryGetValue((depth, days), out double[]? means))
        {
            means = RunningMean.Over(Soil(depth).MeanC, days);
            soilMeans.Add((depth, days), means);
        }

        return At(means, day);
    }

    /// <summary>Standard deviation of the day's soil temperature [°C].</summary>
    public double SoilDeviationAt(Depth depth, DateOnly day) => At(Soil(depth).DeviationC, day);

    /// <summary>A heat sum at the end of a day [°C-days]; NaN where it is not known.</summary>
    public double HeatSumAt(HeatSumDefinition definition, DateOnly day) => At(HeatSumColumn(definition), day);

    /// <summary>A heat sum at the end of each day [°C-days].</summary>
    public double[] HeatSumColumn(HeatSumDefinition definition)
    {
        ArgumentNullException.ThrowIfNull(definition);
        if (heatSums.TryGetValue(definition, out double[]? sums)) return sums;
        ReadOnlySpan<double> soilMean = definition.SoilDepth is { } depth ? Soil(depth).MeanC : [];
        sums = HeatSum.Column(Series, definition, Site.Hemisphere, soilMean);
        heatSums.Add(definition, sums);
        return sums;
    }

    /// <summary>How many days of a span were filled rather than measured [days].</summary>
    public int FilledDays(DateSpan span)
    {
        int filled = 0;
        int last = Math.Min(Series.Count - 1, Series.IndexOf(span.Last));
        for (int i = Math.Max(0, Series.IndexOf(span.First)); i <= last; i++)
        {
            if (Series.QualityAt(i) == Mark.Filled) filled++;
        }

        return filled;
    }

    private double At(double[] column, DateOnly day)
    {
        int index = Series.IndexOf(day);
        return (uint)index < (uint)column.Length ? column[index] : double.NaN;
    }
}
