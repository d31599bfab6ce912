using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Soil;
using GddWatch.Agronomy.Treatments.Conditions;
using GddWatch.Agronomy.Turf;
using GddWatch.Agronomy.Weather;

namespace GddWatch.Agronomy.Windows;

/// <summary>What the air and the rain mean to turf, as columns made once when first asked for.</summary>
internal sealed class TurfColumns(DailySeries series, Site site, IReadOnlyList<DateOnly> watered, Func<TurfType, RootZone>? zoneBefore = null)
{
    /// <summary>Over how many days the use of water is averaged [days].</summary>
    private const int DaysOfUse = 7;

    private readonly Dictionary<(AirValue Value, int Days), double[]> air = [];
    private readonly Dictionary<(TurfType Turf, int Days), double[]> growth = [];
    private readonly Dictionary<int, double[]> rain = [];
    private readonly Dictionary<TurfType, double[]> depletion = [];
    private readonly Dictionary<TurfType, double[]> allowed = [];
    private double[]? evapotranspiration;

    /// <summary>Reference evapotranspiration of each day [mm].</summary>
    public double[] ReferenceEvapotranspirationMm => evapotranspiration ??= ReferenceEvapotranspiration.Column(series, site.Latitude, site.ElevationM);

    /// <summary>The water missing from the root zone at the end of each day [mm]; NaN where it is not known.</summary>
    public double[] DepletionMm(TurfType turf)
    {
        if (depletion.TryGetValue(turf, out double[]? known)) return known;
        double[] column;
        if (site.Soil is { } soil)
        {
            double totalMm = RootZone.TotalMm(soil);
            column = new double[series.Count];
            RootZoneColumn.GoOn(
                zoneBefore?.Invoke(turf) ?? RootZone.Unknown(totalMm), turf, totalMm, ReferenceEvapotranspirationMm, series.Column(WeatherVariable.PrecipitationMm), watered.Select(series.IndexOf).ToHashSet(), column);
        }
        else
        {
            column = new double[series.Count];
            Array.Fill(column, double.NaN);
        }

        depletion.Add(turf, column);
        return column;
    }

    /// <summary>How the root zone stands at the end of the last day; the site's soil must be known.</summary>
    public RootZone ZoneAtEnd(TurfType turf)
    {
        double totalMm = RootZone.TotalMm(site.Soil!.Value);
        return RootZoneColumn.GoOn(
            zoneBefore?.Invoke(turf) ?? RootZone.Unknown(totalMm), turf, totalMm, ReferenceEvapotranspirationMm, series.Column(WeatherVariable.PrecipitationMm), watered.Select(series.IndexOf).ToHashSet(), []);
    }

    /// <summary>The water missing from the root zone at the end of a day, and what may be missing at the use of the last week [mm].</summary>
    public (double DepletionMm, double AllowedMm) RootZoneAt(TurfType turf, DateOnly day)
    {
        int index = series.IndexOf(day);
        return (uint)index < (uint)series.Count ? (DepletionMm(turf)[index], AllowedMm(turf)[index]) : (double.NaN, double.NaN);
    }

    /// <summary>What may be missing from the root zone at the use of the last week, on each day [mm]; NaN where it is not known.</summary>
    public double[] AllowedMm(TurfType turf)
    {
        if (allowed.TryGetValue(turf, out double[]? known)) return known;
        var column = new double[series.Count];
        double totalMm = site.Soil is { } soil ? RootZone.TotalMm(soil) : double.NaN;
        double[] used = ReferenceEvapotranspirationMm;
        for (int i = 0; i < column.Length; i++)
        {
            double week = 0;
            for (int back = 0; back < DaysOfUse; back++) week += i >= back ? used[i - back] : double.NaN;
            column[i] = double.IsNaN(totalMm) ? double.NaN : RootZone.AllowedMm(turf, totalMm, week / DaysOfUse);
        }

        allowed.Add(turf, column);
        return column;
    }

    /// <summary>An air temperature averaged over the last days [°C].</summary>
    public double[] AirMeans(AirValue value, int days)
    {
        if (air.TryGetValue((value, days), out double[]? known)) return known;
        ReadOnlySpan<double> minimum = series.MinimumAirC;
        ReadOnlySpan<double> maximum = series.MaximumAirC;
        var values = new double[series.Count];
        for (int i = 0; i < values.Length; i++) values[i] = Air(value, minimum[i], maximum[i]);
        double[] means = days == 1 ? values : RunningMean.Over(values, days);
        air.Add((value, days), means);
        return means;
    }

    /// <summary>The growth potential averaged over the last days.</summary>
    public double[] GrowthMeans(TurfType turf, int days)
    {
        if (growth.TryGetValue((turf, days), out double[]? known)) return known;
        double[] means = days == 1 ? DailyGrowth(turf) : RunningMean.Over(GrowthMeans(turf, 1), days);
        growth.Add((turf, days), means);
        return means;
    }

    /// <summary>The rain of the last days [mm].</summary>
    public double[] RainSums(int days)
    {
        if (rain.TryGetValue(days, out double[]? known)) return known;
        ReadOnlySpan<double> daily = series.Column(WeatherVariable.PrecipitationMm);
        double[] sums;
        if (daily.IsEmpty)
        {
            sums = new double[series.Count];
            Array.Fill(sums, double.NaN);
        }
        else
        {
            sums = RunningMean.Over(daily, days);
            for (int i = 0; i < sums.Length; i++) sums[i] *= days;
        }

        rain.Add(days, sums);
        return sums;
    }

    /// <summary>Which of a day's temperatures is meant.</summary>
    public static double Air(AirValue value, double minimumC, double maximumC) => value switch
    {
        AirValue.Minimum => minimumC,
        AirValue.Maximum => maximumC,
        _ => (minimumC + maximumC) / 2,
    };

    private double[] DailyGrowth(TurfType turf)
    {
        double[] means = AirMeans(AirValue.Mean, 1);
        var potentials = new double[means.Length];
        for (int i = 0; i < means.Length; i++) potentials[i] = GrowthPotential.Of(turf, means[i]);
        return potentials;
    }
}
