using GddWatch.Agronomy.Soil;
using Xunit;

namespace GddWatch.Agronomy.Tests.Soil;

/// <summary>Every model that the core has, by its name.</summary>
internal static class SoilModels
{
    public static ISoilTemperatureModel[] All { get; } = [LayeredTurfSoil.Default];

    public static TheoryData<string> Names => [.. All.Select(model => model.Name)];

    public static ISoilTemperatureModel Called(string name) => All.Single(model => model.Name == name);
}
