using GddWatch.Agronomy.Soil;

namespace GddWatch.Validation.Report;

/// <summary>Every model of the core but the default one.</summary>
internal static class Rivals
{
    public static IReadOnlyList<ISoilTemperatureModel> All { get; } = Complete(
    [
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
    ]);

    /// <summary>A model that was added to the core and forgotten here must not go unmeasured.</summary>
    private static ISoilTemperatureModel[] Complete(ISoilTemperatureModel[] named)
    {
        HashSet<Type> known = [typeof(LayeredTurfSoil), .. named.Select(model => model.GetType())];
        string[] forgotten =
        [
            .. typeof(ISoilTemperatureModel).Assembly.GetTypes()
                .Where(type => type.IsClass && !type.IsAbstract && type.IsAssignableTo(typeof(ISoilTemperatureModel)) && !known.Contains(type))
                .Select(type => type.Name),
        ];
        return forgotten.Length == 0
            ? named
            : throw new InvalidOperationException($"{nameof(Rivals)} does not name {string.Join(", ", forgotten)}; add it there.");
    }
}
