using GddWatch.Agronomy.Soil;
using GddWatch.Validation.Fitting;
using GddWatch.Validation.Scoring;
using GddWatch.Validation.Weather;

namespace GddWatch.Validation.Report;

/// <summary>What the report is written from.</summary>
/// <param name="Stations">The stations of the reference network.</param>
/// <param name="HeldOut">The default model's estimates, each station with constants from the others.</param>
/// <param name="Models">All models at 5 cm, the default first.</param>
/// <param name="Elsewhere">Stations of other networks, on which no model was fitted.</param>
internal sealed record Evidence(
    IReadOnlyList<MeasuredStation> Stations, LeaveOneStationOut HeldOut, IReadOnlyList<ModelRun> Models, IReadOnlyList<MeasuredStation> Elsewhere)
{
    public SoilEstimate Default => HeldOut.WithRain[5];

    public SoilEstimate AirTemperaturesOnly => HeldOut.AirOnly[5];

    /// <summary>What people use today.</summary>
    public SoilEstimate AirOfFiveDays { get; } = SoilEstimate.Of(new RunningMeanOfAir(5), Stations, 5);

    /// <summary>The middle of each day's air temperatures [°C], a column a station, of which the date rules take their own means.</summary>
    public double[][] DailyAirC { get; } = [.. Stations.Select(DailyAir)];

    private static double[] DailyAir(MeasuredStation station)
    {
        var middle = new double[station.Series.Count];
        for (int day = 0; day < middle.Length; day++) middle[day] = (station.Series.MinimumAirC[day] + station.Series.MaximumAirC[day]) / 2;
        return middle;
    }
}
