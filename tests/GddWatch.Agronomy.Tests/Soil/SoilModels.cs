using GddWatch.Agronomy.Soil;
using Xunit;

namespace GddWatch.Agronomy.Tests.Soil;

/// <summary>Every model that the core has, by its name.</summary>
internal static class SoilModels
{
    public static ISoilTemperatureModel[] All { get; } =
    [
        LayeredTurfSoil.Default,
        new RunningMeanOfAir(5),
        new RunningMeanOfAir(7),
        new SmoothedAir(),
        new ZhengHuntRunning1993(),
        new Plauborg2002(),
        new KattererAndren2009(1),
        new KattererAndren2009(),
        new NeitschEtAl2011(),
        new PotterWilliams1994(),
        new LindstromEtAl2002(),
    ];

    public static TheoryData<string> Names => [.. All.Select(model => model.Name)];

    public static ISoilTemperatureModel Called(string name) => All.Single(model => model.Name == name);
}
