using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Soil;
using GddWatch.Agronomy.Weather;
using GddWatch.Validation.Weather;

namespace GddWatch.Validation.Scoring;

/// <summary>A model's daily mean soil temperature [°C] and its standard deviation [°C] at one depth: an array a station, a value a day.</summary>
internal sealed record SoilEstimate(int DepthCm, double[][] MeanC, double[][] DeviationC)
{
    /// <summary>Half the width of an 80 % range in standard deviations: the 90th percentile of the normal distribution.</summary>
    public const double EightyPercent = 1.2816;

    public static SoilEstimate Empty(IReadOnlyList<MeasuredStation> stations, int depthCm) =>
        new(depthCm, [.. stations.Select(Column)], [.. stations.Select(Column)]);

    public static SoilEstimate Of(ISoilTemperatureModel model, IReadOnlyList<MeasuredStation> stations, int depthCm, bool withRain = true)
    {
        SoilEstimate estimate = Empty(stations, depthCm);
        for (int i = 0; i < stations.Count; i++) estimate.Fill(i, model, stations[i], withRain);
        return estimate;
    }

    public void Fill(int index, ISoilTemperatureModel model, MeasuredStation station, bool withRain)
    {
        DailySeries series = withRain ? station.Series : station.AirOnly;
        model.Estimate(series, station.LatitudeDegrees, Depth.FromCentimetres(DepthCm), MeanC[index], DeviationC[index]);
    }

    private static double[] Column(MeasuredStation station) => new double[station.Series.Count];
}
