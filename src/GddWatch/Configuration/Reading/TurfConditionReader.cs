using GddWatch.Agronomy.Treatments.Conditions;
using GddWatch.Configuration.Scalars;
using GddWatch.Configuration.Texts;
using GddWatch.Configuration.Yaml;

namespace GddWatch.Configuration.Reading;

/// <summary>Turns the texts of conditions on air, growth, rain and root zone into conditions; null where anything in them is wrong.</summary>
/// <param name="faults">Takes what is wrong.</param>
internal sealed class TurfConditionReader(FaultList faults)
{
    private static readonly Holding OnTheDay = new(1, 1);

    public AirTemperatureCondition? ReadAirTemperature(AirTemperatureText text)
    {
        if (text is { Above: null, Below: null }) Missing(text, ["above", "below"], "The air temperature has no limit.", "above, below or both, such as \"below: 85 °F\"");
        if (text is { Above: { } low, Below: { } high } && high.Value <= low.Value)
        {
            faults.Add(high.Place, $"The upper limit is not above the lower one of {low.Place.Text}.", "a temperature above the lower limit");
        }

        if (text is { Next: not null, Held: { } held }) faults.Add(held.Place, "The forecast is looked at day by day, so nothing can be held.", "next without held");
        if (text is { Next: not null, MeanOver: { Value.Days: > 1 } mean }) faults.Add(mean.Place, "The forecast is looked at day by day, so nothing is averaged.", "next without mean-over");
        if (text is { Next: not null, LetsGoBy: { } keeps }) faults.Add(keeps.Place, "Each day has a forecast of its own, so nothing can be kept from the day before.", "next without lets-go-by");
        return text is { Of: { } of } && (text.Above ?? text.Below) is not null
            ? new AirTemperatureCondition(of.Value, text.MeanOver?.Value.Days ?? 1, text.Above?.Value, text.Below?.Value, text.Held?.Value ?? OnTheDay, text.LetsGoBy?.Value, text.Next?.Value.Days)
            : null;
    }

    public GrowthPotentialCondition? ReadGrowthPotential(GrowthPotentialText text)
    {
        Placed<Share>? share = OneOf(text, text.AtLeast, text.AtMost, "The growth potential has no limit.");
        bool ofPeak = text.OfUsualPeak?.Value ?? false;
        if (share is { Value.Fraction: > 1 }) faults.Add(share.Place, ofPeak ? "Growth is not usually above its own peak." : "Growth cannot be above 100 %.", "0 % to 100 %");
        if (text.FallbackPeak is { } stated && !ofPeak) faults.Add(stated.Place, "A fallback for the peak does nothing here.", "of-usual-peak: true beside it, or no fallback-peak");
        if (text.FallbackPeak is { Value.Fraction: <= 0 or > 1 } peak) faults.Add(peak.Place, "Growth cannot have such a peak.", "above 0 % and up to 100 %");
        bool rises = text.AtLeast is not null;
        if (share is not null && text.LetsGoAt is { } back && (rises ? back.Value.Fraction > share.Value.Fraction : back.Value.Fraction < share.Value.Fraction))
        {
            faults.Add(back.Place, "It would let go before it is met.", rises ? "the limit or a share below it" : "the limit or a share above it");
        }

        return share is not null && text is { Turf: { } turf, MeanOver: { } meanOver }
            ? new GrowthPotentialCondition(
                turf.Value, meanOver.Value.Days, rises ? Passing.RisesAbove : Passing.FallsBelow, share.Value.Fraction, text.Held?.Value ?? OnTheDay,
                ofPeak ? text.FallbackPeak?.Value.Fraction ?? double.NaN : null, text.Direction?.Value, text.LetsGoAt?.Value.Fraction)
            : null;
    }

    public DaysBeforeGrowthFalls? ReadGrowthFalls(GrowthFallsText text)
    {
        if (text is { AtLeast: null, AtMost: null }) Missing(text, ["at-least", "at-most"], "Nothing says how many days must be left.", "at-least, at-most or both, such as \"at-least: 28 days\"");
        if (text is { AtLeast: { } least, AtMost: { } most } && most.Value.Days <= least.Value.Days)
        {
            faults.Add(most.Place, $"The upper limit is not above the lower one of {least.Place.Text}.", "more days than at-least has");
        }

        if (text.Under is { Value.Fraction: >= 1 } high) faults.Add(high.Place, "Growth is nearly always under its own peak, so nothing would fall.", "above 0 % and below 100 %, such as \"50 %\"");
        if (text.Under is { Value.Fraction: 0 } none) faults.Add(none.Place, "Growth never falls under nothing.", "above 0 % and below 100 %, such as \"50 %\"");
        return text is { Turf: { } turf, Under: { } under } && (text.AtLeast ?? text.AtMost) is not null
            ? new DaysBeforeGrowthFalls(turf.Value, under.Value.Fraction, text.AtLeast?.Value.Days, text.Fallback?.Value, text.AtMost?.Value.Days)
            : null;
    }

    public RainCondition? ReadRain(RainText text)
    {
        if (text is { InLast: not null, InNext: { } both }) faults.Add(both.Place, "The rain is both past and to come.", "in-last or in-next, one of the two");
        if (text is { InLast: null, InNext: null }) Missing(text, ["in-last", "in-next"], "Nothing says over which days the rain is meant.", "in-last or in-next, such as \"in-last: 2 days\"");
        if (text is { AtLeast: null, AtMost: null }) Missing(text, ["at-least", "at-most"], "The rain has no limit.", "at-least, at-most or both, such as \"at-least: 10 mm\"");
        if (text is { AtLeast: { } least, AtMost: { } most } && most.Value.Millimetres <= least.Value.Millimetres)
        {
            faults.Add(most.Place, $"The upper limit is not above the lower one of {least.Place.Text}.", "more rain than at-least has");
        }

        return (text.InLast ?? text.InNext) is { } days && (text.AtLeast ?? text.AtMost) is not null
            ? new RainCondition(days.Value.Days, text.InNext is not null, text.AtLeast?.Value, text.AtMost?.Value)
            : null;
    }

    public RootZoneDepletionCondition? ReadRootZone(RootZoneText text)
    {
        Placed<MissingWater>? limit = OneOf(text, text.AtLeast, text.AtMost, "The depletion has no limit.");
        return limit is not null && text.Turf is { } turf
            ? new RootZoneDepletionCondition(turf.Value, text.AtLeast is null ? Passing.FallsBelow : Passing.RisesAbove, limit.Value.ShareOfAllowed, limit.Value.Depth)
            : null;
    }

    private Placed<T>? OneOf<T>(TextGroup text, Placed<T>? least, Placed<T>? most, string problem)
        where T : notnull
    {
        if (least is not null && most is not null) faults.Add(most.Place, "There is both a lower and an upper limit.", "at-least or at-most, one of the two; two conditions under \"all:\" make a band");
        if (least is null && most is null) Missing(text, ["at-least", "at-most"], problem, "at-least or at-most, such as \"at-least: 50 %\"");
        return least ?? most;
    }

    private void Missing(TextGroup text, string[] keys, string problem, string accepted)
    {
        // A key that was written and could not be read has its own fault already.
        if (!text.WrittenKeys.Intersect(keys).Any()) faults.Add(text.Place, null, problem, accepted);
    }
}
