using GddWatch.Agronomy.Heat;
using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Treatments;
using GddWatch.Agronomy.Treatments.Conditions;
using GddWatch.Configuration.Texts;
using GddWatch.Configuration.Yaml;

namespace GddWatch.Configuration.Reading;

/// <summary>Turns the text of a condition into the condition; null where anything in it is wrong.</summary>
/// <param name="faults">Takes what is wrong.</param>
/// <param name="treatmentNames">The treatments that are known, by id, with their names.</param>
public sealed class ConditionReader(FaultList faults, IReadOnlyDictionary<string, string> treatmentNames)
{
    private const int UsualWithinDays = 200;
    private readonly TurfConditionReader turf = new(faults);

    private static readonly Temperature WaterFreezes = Temperature.FromCelsius(0);

    /// <summary>Reads a condition with all that lies in it.</summary>
    public Condition? Read(ConditionText text)
    {
        (string Key, Func<Condition?> Read)[] written =
        [
            .. Where("all", text.All, ReadAll),
            .. Where("any", text.Any, ReadAny),
            .. Where("not", text.Not, part => Read(part) is { } condition ? new Not(condition) : null),
            .. Where("soil-temperature", text.SoilTemperature, ReadSoilTemperature),
            .. Where("heat-sum", text.HeatSum, ReadHeatSum),
            .. Where("calendar", text.Calendar, ReadCalendar),
            .. Where("days-before-first-freeze", text.DaysBeforeFirstFreeze, ReadFirstFreeze),
            .. Where("days-after-last-freeze", text.DaysAfterLastFreeze, ReadLastFreeze),
            .. Where("air-temperature", text.AirTemperature, turf.ReadAirTemperature),
            .. Where("growth-potential", text.GrowthPotential, turf.ReadGrowthPotential),
            .. Where("days-before-growth-falls", text.DaysBeforeGrowthFalls, turf.ReadGrowthFalls),
            .. Where("rain", text.Rain, turf.ReadRain),
            .. Where("root-zone-depletion", text.RootZoneDepletion, turf.ReadRootZone),
            .. Where("since-treatment", text.SinceTreatment, ReadSinceTreatment),
        ];
        Condition?[] read = [.. written.Select(each => each.Read())];
        if (written.Length == 1) return read[0];
        if (written.Length > 1)
        {
            string found = string.Join(", ", written.Select(each => each.Key));
            faults.Add(text.Place, found, "Several conditions stand side by side, so it is not clear whether all or any of them are meant.", "one condition, or a list of them under \"all:\" or \"any:\"");
        }

        else if (text.WrittenKeys.Count == 0)
        {
            faults.Add(text.Place, null, "No condition stands here.", $"one of {string.Join(", ", TextMember.Of(typeof(ConditionText)).Select(member => member.Key))}");
        }

        return null;
    }

    private static IEnumerable<(string Key, Func<Condition?> Read)> Where<T>(string key, T? text, Func<T, Condition?> read)
        where T : class => text is null ? [] : [(key, () => read(text))];

    private AllOf? ReadAll(PlacedList<ConditionText> texts)
    {
        if (ReadParts(texts) is not { } parts) return null;
        if (Contradictions.InAll(parts) is not { } never) return new AllOf(parts);
        faults.Add(texts.Place, null, never, "limits that leave something between them, or \"any:\" where one of the two is enough");
        return null;
    }

    private AnyOf? ReadAny(PlacedList<ConditionText> texts) => ReadParts(texts) is { } parts ? new AnyOf(parts) : null;

    private Condition[]? ReadParts(PlacedList<ConditionText> texts)
    {
        Condition?[] parts = [.. texts.Items.Select(Read)];
        if (texts.Written == 0) faults.Add(texts.Place, null, "This list of conditions is empty.", "at least one condition");
        Condition[] good = [.. parts.OfType<Condition>()];
        return good.Length > 0 && good.Length == texts.Written ? good : null;
    }

    private SoilTemperatureCondition? ReadSoilTemperature(SoilTemperatureText text)
    {
        Placed<Temperature>? threshold = text.RisesAbove ?? text.FallsBelow;
        if (text.RisesAbove is not null && text.FallsBelow is { } second)
        {
            faults.Add(second.Place, "The threshold is both rises-above and falls-below.", "one of the two");
        }

        if (threshold is null)
        {
            if (text.WrittenKeys.Intersect(["rises-above", "falls-below"]).Any()) return null;
            faults.Add(text.Place, null, "The soil temperature has no threshold.", "rises-above or falls-below with a temperature, such as \"rises-above: 50 °F\"");
            return null;
        }

        Passing passing = text.RisesAbove is null ? Passing.FallsBelow : Passing.RisesAbove;
        WhereAlreadySo? already = text.WhereAlreadySo is { } rule ? ReadWhereAlreadySo(rule, passing, threshold.Value) : null;
        if (text.LetsGoAt is { } back && (passing == Passing.RisesAbove ? back.Value > threshold.Value : back.Value < threshold.Value))
        {
            faults.Add(back.Place, "It would let go before it is met.", passing == Passing.RisesAbove ? "the threshold or a temperature below it" : "the threshold or a temperature above it");
        }

        return text is { Depth: { } depth, MeanOver: { } meanOver, Held: { } held }
            ? new SoilTemperatureCondition(depth.Value, meanOver.Value.Days, passing, threshold.Value, held.Value, already, text.LetsGoAt?.Value)
            : null;
    }

    private WhereAlreadySo? ReadWhereAlreadySo(WhereAlreadySoText text, Passing passing, Temperature threshold)
    {
        if (text is not { DaysBeforeUsual: { } days, Usual: { } usual, Fallback: { } fallback, Within: { } within }) return null;
        bool beyond = passing == Passing.RisesAbove ? usual.Value >= threshold : usual.Value <= threshold;
        if (!beyond)
        {
            string side = passing == Passing.RisesAbove ? "below" : "above";
            faults.Add(usual.Place, $"The usual temperature lies {side} the threshold, so its usual date comes first and the wait would be for nothing.", "the threshold or a temperature past it");
        }

        return new WhereAlreadySo(days.Value.Days, usual.Value, fallback.Value, within.Value.Days);
    }

    private HeatSumCondition? ReadHeatSum(HeatSumText text)
    {
        if (text is { Upper: { } upper, Base: { } floor } && upper.Value <= floor.Value)
        {
            faults.Add(upper.Place, $"The upper threshold is not above the base of {floor.Place.Text}.", "a temperature above the base");
            return null;
        }

        if (text is { Upper: { } above, Cutoff: null or { Value: DegreeDayCutoff.None } })
        {
            faults.Add(text.Cutoff?.Place ?? above.Place, "Nothing says what happens above the upper threshold.", "cutoff: horizontal, intermediate, intermediate pointwise or vertical");
        }

        if (text is { Upper: null, Cutoff: { Value: not DegreeDayCutoff.None } cutoff })
        {
            faults.Add(cutoff.Place, "There is a cutoff, but no upper threshold where it could act.", "an upper threshold such as \"upper: 86 °F\", or no cutoff");
        }

        if (text is { SoilDepth: not null, Method: { Value: not DegreeDayMethod.SimpleAverage } method })
        {
            faults.Add(method.Place, "A soil sum goes by the daily mean and knows no extremes of the day.", "simple average where soil-depth is given");
        }

        if (text is not { Reaches: { } reaches, Base: { } floorTemperature, Method: { } reckoned, From: { } from }) return null;
        DegreeDayCutoff cutoffOrNone = text.Cutoff?.Value ?? DegreeDayCutoff.None;
        var sum = new HeatSumDefinition(floorTemperature.Value, text.Upper?.Value, reckoned.Value, cutoffOrNone, from.Value, text.SoilDepth?.Value, Biofix(text.FromWhen));
        return new HeatSumCondition(sum, reaches.Value);
    }

    private CalendarGuard? ReadCalendar(CalendarText text)
    {
        if (text is not { NotBefore: null, NotAfter: null }) return new CalendarGuard(text.NotBefore?.Value, text.NotAfter?.Value);
        if (text.WrittenKeys.Count > 0) return null;
        faults.Add(text.Place, null, "The guard by the date has no date.", "not-before, not-after or both, such as \"not-before: 05-01\"");
        return null;
    }

    private static DaysBeforeFirstFreeze? ReadFirstFreeze(FirstFreezeText text) => text is { AtMost: { } atMost, Chance: { } chance }
        ? new DaysBeforeFirstFreeze(atMost.Value.Days, chance.Value.Fraction, text.Freeze?.Value ?? WaterFreezes, text.Fallback?.Value)
        : null;

    private static DaysAfterLastFreeze? ReadLastFreeze(LastFreezeText text) => text is { AtLeast: { } atLeast, Chance: { } chance }
        ? new DaysAfterLastFreeze(atLeast.Value.Days, chance.Value.Fraction, text.Freeze?.Value ?? WaterFreezes, text.Fallback?.Value)
        : null;

    private static BiofixCondition? Biofix(BiofixText? text) =>
        text is { MeanOver: { } meanOver, AtLeast: { } atLeast } ? new BiofixCondition(meanOver.Value.Days, atLeast.Value) : null;

    private SinceTreatment? ReadSinceTreatment(SinceTreatmentText text)
    {
        Names.CheckReferences(text.Treatment is { } named ? [named] : [], [.. treatmentNames.Keys], "treatment", faults);
        if (text is { AtLeast: null, AtMost: null, Heat: null } && !text.WrittenKeys.Intersect(["at-least", "at-most", "heat"]).Any())
        {
            faults.Add(text.Place, null, "Nothing says how long ago.", "at-least, at-most or heat, such as \"at-least: 42 days\"");
        }

        if (text is { AtLeast: { } least, AtMost: { } most } && most.Value.Days <= least.Value.Days)
        {
            faults.Add(most.Place, $"The upper limit is not above the lower one of {least.Place.Text}.", "more days than at-least has");
        }

        int within = text.Within?.Value.Days ?? UsualWithinDays;
        if (text.AtLeast is { } old && old.Value.Days > within)
        {
            faults.Add(old.Place, $"A record older than {Wording.Days(within)} counts no more, so this is never met.", $"fewer days, or as many in within: \"within: {Wording.Days(old.Value.Days)}\"");
        }

        if (text.Heat is { } heat && text is not { Base: not null, Method: not null })
        {
            faults.Add(heat.Place, "The heat has no base or no method, and means nothing without them.", "base and method beside it, such as \"base: 0 °C, method: simple average\"");
        }

        if (text.Treatment is not { } treatment || !treatmentNames.TryGetValue(treatment.Value, out string? name)) return null;
        HeatSince? since = text is { Heat: { } reaches, Base: { } floor, Method: { } method } ? new HeatSince(reaches.Value, floor.Value, method.Value) : null;
        return new SinceTreatment(treatment.Value, name, text.AtLeast?.Value.Days, text.AtMost?.Value.Days, since, within);
    }
}
