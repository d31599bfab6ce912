using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Treatments.Conditions;

namespace GddWatch.Configuration.Reading;

/// <summary>What a condition asks of one value: between which ends it must lie, and on how many days.</summary>
/// <param name="Of">The value; two conditions on equal values look at the same one.</param>
/// <param name="Condition">The condition.</param>
/// <param name="Low">The lower end; where the condition lets go late, the one at which it does.</param>
/// <param name="High">The upper end, likewise.</param>
/// <param name="Held">On how many of the last days.</param>
/// <param name="LetsGo">Whether, once met, it is enough that the value lies there on the day itself.</param>
internal sealed record Limit(object Of, Condition Condition, double Low, double High, Holding Held, bool LetsGo = false)
{
    private static readonly Holding Once = new(1, 1);

    /// <summary>What a condition asks; nothing for one whose parts need not all be met.</summary>
    public static IEnumerable<Limit> In(Condition condition) => condition switch
    {
        AllOf all => all.Parts.SelectMany(In),
        SoilTemperatureCondition soil => [OfSoil(soil)],
        AirTemperatureCondition air => [OfAir(air)],
        GrowthPotentialCondition growth => OfGrowth(growth),
        RainCondition rain => [new(("rain", rain.Days, rain.IsAhead), rain, rain.AtLeast?.Millimetres ?? 0, rain.AtMost?.Millimetres ?? double.PositiveInfinity, Once)],
        DaysBeforeGrowthFalls falls => [new(("fall of growth", falls.Turf, falls.UnderShareOfPeak), falls, falls.AtLeast ?? 0, falls.AtMost ?? double.PositiveInfinity, Once)],
        RootZoneDepletionCondition { ShareOfAllowed: { } share } roots => [Past(("root zone by share", roots.Turf), roots, roots.Passing, share, Once)],
        RootZoneDepletionCondition { Depth: { } depth } roots => [Past(("root zone", roots.Turf), roots, roots.Passing, depth.Millimetres, Once)],
        SinceTreatment since => [new(("since", since.Treatment), since, since.AtLeastDays ?? 0, since.AtMostDays ?? since.WithinDays, Once)],
        _ => [],
    };

    /// <summary>
    /// Whether the two can never be met on the same day. The days on which they are met must then be too many to lie beside each other: three warm days and two cold ones
    /// find room in five. Said only where it is certain.
    /// </summary>
    public bool Excludes(Limit other)
    {
        if (!Of.Equals(other.Of) || (Low <= other.High && other.Low <= High)) return false;
        return Ways.All(mine => other.Ways.All(theirs => mine.Days + theirs.Days > Math.Max(mine.OfDays, theirs.OfDays)));
    }

    private IEnumerable<Holding> Ways => LetsGo ? [Held, Once] : [Held];

    private static Limit OfSoil(SoilTemperatureCondition soil) =>
        Past(("soil", soil.Depth, soil.MeanOverDays), soil, soil.Passing, (soil.LetsGoAt ?? soil.Threshold).Celsius, soil.Holding, soil.LetsGoAt is not null);

    private static Limit OfAir(AirTemperatureCondition air)
    {
        double low = air.Above?.Celsius ?? double.NegativeInfinity;
        double high = air.Below?.Celsius ?? double.PositiveInfinity;
        // Every forecast that is looked at begins with the next day.
        if (air.NextDays is not null) return new(("air ahead", air.Of), air, low, high, Once);
        double wider = air.LetsGoBy?.Celsius ?? 0;
        return new(("air", air.Of, air.MeanOverDays), air, low - wider, high + wider, air.Holding, air.LetsGoBy is not null);
    }

    private static IEnumerable<Limit> OfGrowth(GrowthPotentialCondition growth)
    {
        yield return Past(
            ("growth", growth.Turf, growth.MeanOverDays, growth.OfPeak is null), growth, growth.Passing, growth.LetsGoAt ?? growth.Share, growth.Holding, growth.LetsGoAt is not null);
        if (growth.Direction is not { } direction) yield break;
        // Falling, flat and rising as -1, 0 and 1.
        (double low, double high) = direction switch
        {
            GrowthDirection.Falling => (-1, -1),
            GrowthDirection.RisingOrFlat => (0, 1),
            _ => (1, 1),
        };
        yield return new(("growth's way", growth.Turf, growth.MeanOverDays), growth, low, high, Once);
    }

    private static Limit Past(object of, Condition condition, Passing passing, double value, Holding held, bool letsGo = false) => passing == Passing.RisesAbove
        ? new(of, condition, value, double.PositiveInfinity, held, letsGo)
        : new(of, condition, double.NegativeInfinity, value, held, letsGo);
}
