using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Treatments;
using GddWatch.Agronomy.Treatments.Conditions;
using GddWatch.Configuration.Texts;
using GddWatch.Configuration.Yaml;

namespace GddWatch.Configuration.Reading;

/// <summary>Reads what past windows are compared with.</summary>
/// <param name="faults">Takes what is wrong.</param>
public sealed class RivalReader(FaultList faults)
{
    /// <summary>What is whole of it.</summary>
    public RivalRules Read(CompareWithText text)
    {
        Placed<string>[] names = [.. (text.Seen?.Items ?? []).Select(each => each.What).OfType<Placed<string>>()];
        Names.CheckOnce(names, faults);
        if (text is { CalendarNote: { } note, Calendar: null } && !text.WrittenKeys.Contains("calendar"))
        {
            faults.Add(note.Place, "There is a note on a date, and no date.", "calendar beside it, such as \"calendar: 04-15\"");
        }

        return new RivalRules(
            text.Calendar?.Value,
            text.CalendarNote?.Value ?? "",
            text.Air is { } air ? Read(air) : null,
            [.. (text.Seen?.Items ?? []).Where(each => each.What is not null).Select(each => new SeenEvent(each.What!.Value, each.OpensBefore?.Value.Days ?? 0))]);
    }

    private RunningMeanRule? Read(RunningMeanText text)
    {
        if (text is { RisesAbove: not null, FallsBelow: { } second }) faults.Add(second.Place, "The threshold is both rises-above and falls-below.", "one of the two");
        Placed<Temperature>? threshold = text.RisesAbove ?? text.FallsBelow;
        if (threshold is null && !text.WrittenKeys.Intersect(["rises-above", "falls-below"]).Any())
        {
            faults.Add(text.Place, null, "The running mean has no threshold.", "rises-above or falls-below with a temperature, such as \"rises-above: 50 °F\"");
        }

        return threshold is not null && text.MeanOver is { } days
            ? new RunningMeanRule(days.Value.Days, text.RisesAbove is null ? Passing.FallsBelow : Passing.RisesAbove, threshold.Value)
            : null;
    }
}
