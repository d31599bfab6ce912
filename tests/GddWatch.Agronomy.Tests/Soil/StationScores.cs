using GddWatch.Agronomy.Soil;
using GddWatch.Agronomy.Weather;

namespace GddWatch.Agronomy.Tests.Soil;

/// <summary>A model's errors at 50 stations, all days with a measurement pooled.</summary>
internal sealed class StationScores
{
    private StationScores()
    {
    }

    public SoilErrors HumidYear { get; } = new();

    /// <summary>February to May, when windows open for warmth.</summary>
    public SoilErrors HumidSpring { get; } = new();

    /// <summary>August to October, when windows open for cooling.</summary>
    public SoilErrors HumidLateSummer { get; } = new();

    public SoilErrors AllStations { get; } = new();

    public static StationScores Of(ISoilTemperatureModel model, double depthCm = 5)
    {
        var scores = new StationScores();
        foreach (MeasuredStation station in MeasuredStation.All) scores.Add(station, model, depthCm);
        return scores;
    }

    public override string ToString() =>
        $"humid: year {HumidYear}; February to May {HumidSpring}; August to October {HumidLateSummer}; all stations {AllStations}";

    private void Add(MeasuredStation station, ISoilTemperatureModel model, double depthCm)
    {
        SoilTemperatureColumns columns = SomeSoil.Of(model, station.Series, station.Latitude, depthCm);
        ReadOnlySpan<double> measured = station.Series.Column(depthCm < 7.5 ? WeatherVariable.Soil5CmC : WeatherVariable.Soil10CmC);
        for (int i = 0; i < measured.Length; i++)
        {
            AllStations.Add(columns.MeanC[i], columns.DeviationC[i], measured[i]);
            if (!station.Humid) continue;
            HumidYear.Add(columns.MeanC[i], columns.DeviationC[i], measured[i]);
            int month = station.Series.DayAt(i).Month;
            if (month is >= 2 and <= 5) HumidSpring.Add(columns.MeanC[i], columns.DeviationC[i], measured[i]);
            if (month is >= 8 and <= 10) HumidLateSummer.Add(columns.MeanC[i], columns.DeviationC[i], measured[i]);
        }
    }
}
