using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Treatments;
using GddWatch.Agronomy.Treatments.Conditions;
using GddWatch.Configuration.Texts;
using GddWatch.Configuration.Yaml;

namespace GddWatch.Configuration.Reading;

/// <summary>Turns the text of treatments.yaml into treatments, and finds what cannot be meant.</summary>
public sealed class TreatmentsReader
{
    private readonly FaultList faults;
    private readonly Dictionary<string, string> cautions = [];
    private readonly Dictionary<string, string> names = [];
    private readonly Dictionary<string, Condition> openings = [];
    private readonly ConditionReader conditions;
    private readonly RivalReader rivals;

    /// <summary>A reader.</summary>
    /// <param name="faults">Takes what is wrong.</param>
    public TreatmentsReader(FaultList faults)
    {
        this.faults = faults;
        conditions = new ConditionReader(faults, names);
        rivals = new RivalReader(faults);
    }

    /// <summary>The treatments that are whole.</summary>
    public IReadOnlyList<Treatment> Read(TreatmentsFileText? text)
    {
        if (text?.Treatments is not { } list) return [];
        if (list.Written == 0) faults.Add(list.Place, null, "There is no treatment.", "at least one treatment");
        foreach ((Placed<string> name, Placed<string> sentence) in text.Cautions?.Entries ?? []) cautions.TryAdd(name.Value, sentence.Value);
        Names.CheckIds(list.Items.Select(each => each.Id).OfType<Placed<string>>(), "treatment", faults);
        foreach (TreatmentText each in list.Items)
        {
            if (each is { Id: { } id, Name: { } name }) names.TryAdd(id.Value, name.Value);
        }

        CheckExclusions(list.Items);
        Treatment[] treatments = [.. list.Items.Select(Read).OfType<Treatment>()];
        CheckOrder(list.Items);
        return treatments;
    }

    /// <summary>What is named as too early.</summary>
    public IReadOnlyList<NotYet> ReadNotYet(TreatmentsFileText? text)
    {
        var read = new List<NotYet>();
        foreach (NotYetText each in text?.NotYet?.Items ?? [])
        {
            Names.CheckReferences(each.WaitFor is { } awaited ? [awaited] : [], [.. names.Keys], "treatment", faults);
            if (each.Turf is { Written: 0 } none) faults.Add(none.Place, null, "No turf is named, so it is for no site.", "cool-season, warm-season or both");
            if (each is not { Name: { } name, Turf: { } turf, From: { } from, Until: { } until, Reason: { } reason }) continue;
            read.Add(new NotYet(name.Value, [.. turf.Items.Select(one => one.Value)], from.Value, until.Value, reason.Value, each.WaitFor?.Value));
        }

        return read;
    }

    /// <summary>What must be recorded first may not wait for what waits for it.</summary>
    private void CheckOrder(IReadOnlyList<TreatmentText> texts)
    {
        foreach (TreatmentText text in texts)
        {
            if (text is not { Id: { } id, Opens: { } opens } || Contradictions.Circle(id.Value, openings) is not { } circle) continue;
            faults.Add(opens.Place, null, $"This window waits for itself: {string.Join(" waits for ", circle)}, so none of them ever opens.", "an order without a circle: take since-treatment out of one of them");
        }
    }

    private Treatment? Read(TreatmentText text)
    {
        Condition? opens = text.Opens is { } opening ? conditions.Read(opening) : null;
        Condition? closing = text.Closing is { } best ? conditions.Read(best) : null;
        Condition? closed = text.Closed is { } end ? conditions.Read(end) : null;
        Condition? paused = text.Paused is { } wait ? conditions.Read(wait) : null;
        SeasonRule? season = text.Season is { From: { } from, Until: { } until } ? new SeasonRule(from.Value, until.Value) : null;
        if (season is not null && season.From == season.Until)
        {
            faults.Add(text.Season!.Until!.Place, "The season is a single day, in which no window can open and close.", "a last day after the first; before it where the season crosses the turn of the year");
        }

        if (opens is not null) CheckOpening(text, opens, season);
        CheckComes(text.Closing?.Place, closing, season, "is never past its best");
        CheckComes(text.Closed?.Place, closed, season, "is never closed by it");
        CheckComes(text.Paused?.Place, paused, season, "is never paused");
        if (text.Turf is { } turf)
        {
            if (turf.Written == 0) faults.Add(turf.Place, null, "No turf is named, so the treatment is for no site.", "cool-season, warm-season or both");
            Names.CheckOnce(turf.Items, faults);
            CheckTurf(text, turf, (text.Opens, opens), (text.Closing, closing), (text.Closed, closed), (text.Paused, paused));
        }

        if (opens is not null && text.Id is { } named) openings.TryAdd(named.Value, opens);

        Names.CheckReferences(text.Cautions?.Items ?? [], [.. cautions.Keys], "caution", faults);
        Names.CheckOnce(text.Cautions?.Items ?? [], faults);
        if (opens is null || season is null || text is not { Id: { } id, Name: { } name, Turf: { } grows }) return null;
        return new Treatment
        {
            Id = id.Value,
            Name = name.Value,
            Turf = [.. grows.Items.Select(each => each.Value)],
            Season = season,
            Opens = opens,
            Closing = closing,
            Closed = closed,
            Paused = paused,
            Work = text.Work?.Value,
            AgainAfterDays = text.AgainAfter?.Value.Days,
            Excludes = [.. (text.Excludes?.Items ?? []).Select(Read).OfType<Exclusion>()],
            OnlyWithHistory = text.OnlyWithHistory?.Value,
            CompareWith = text.CompareWith is { } compared ? rivals.Read(compared) : RivalRules.None,
            HeadsUp = Read(text.HeadsUp),
            BulletinOnly = text.BulletinOnly?.Value ?? false,
            OnlyWithGrass = Sentences(text.OnlyWithGrass),
            Do = Sentences(text.Do),
            DoPastBest = Sentences(text.DoPastBest),
            DoNot = Sentences(text.DoNot),
            Cautions = [.. (text.Cautions?.Items ?? []).Select(each => cautions.GetValueOrDefault(each.Value, ""))],
            Untested = Sentences(text.Untested),
        };
    }

    private HeadsUpRule Read(HeadsUpText? text)
    {
        HeadsUpRule usual = HeadsUpRule.Usual;
        if (text is null) return usual;
        if (text.Within is { Value.Days: < 1 or > 60 } within) faults.Add(within.Place, "So far ahead no heads-up is of use.", "1 to 60 days");
        if (text.AgainWhenMoved is { Value.Days: < 1 } moved) faults.Add(moved.Place, "It would be told every day.", "at least 1 day");
        return new HeadsUpRule(text.Within?.Value.Days ?? usual.WithinDays, text.Chance?.Value.Fraction ?? usual.Chance, text.AgainWhenMoved?.Value.Days ?? usual.AgainWhenMovedDays);
    }

    private Exclusion? Read(ExclusionText text)
    {
        HoldRule? hold = text.Held is { } held ? Read(held) : null;
        return text is { Treatment: { } other, Choice: { } choice, NotRecorded: { } notRecorded } && hold is not null
            ? new Exclusion(other.Value, names.GetValueOrDefault(other.Value, other.Value), choice.Value, notRecorded.Value, hold)
            : null;
    }

    private HoldRule? Read(HoldText text)
    {
        if (text.Mowings is { } mowings && (mowings.Value < 1 || mowings.Value != Math.Floor(mowings.Value) || mowings.Value > 50))
        {
            faults.Add(mowings.Place, "This is no number of mowings.", "a whole number from 1 to 50");
        }

        if (text.Longest is { Value.Days: < 1 } longest) faults.Add(longest.Place, "Nothing would be held for that long.", "at least 1 day");
        return text.Longest is { } days ? new HoldRule(days.Value.Days, text.LabelDateDecides?.Value ?? false, (int?)text.Mowings?.Value) : null;
    }

    private static string[] Sentences(PlacedList<Placed<string>>? list) => [.. (list?.Items ?? []).Select(each => each.Value)];

    private void CheckTurf(TreatmentText text, PlacedList<Placed<TurfType>> turf, params ReadOnlySpan<(ConditionText? Text, Condition? Condition)> conditions)
    {
        TurfType[] known = [.. turf.Items.Select(each => each.Value)];
        foreach ((ConditionText? written, Condition? condition) in conditions)
        {
            if (condition is null || known.Length == 0 || Contradictions.OtherTurf(condition, known) is not { } other) continue;
            string word = TreatmentSentence.TurfWord(other);
            faults.Add(written!.Place, null, $"It looks at {word} turf, and the treatment {text.Id?.Value} is not for it, so its season never comes.", $"turf that the treatment is for, or {word} among its turf");
        }
    }

    private void CheckOpening(TreatmentText text, Condition opens, SeasonRule? season)
    {
        if (OpeningByDate.Suffices(opens))
        {
            faults.Add(text.Opens!.Place, "calendar", "The date alone would open this window, whatever the weather.", "a condition on the soil or on heat under \"all:\", with the date beside it as a guard");
        }
        else if (season is not null && OpeningByDate.NeverComes(opens, season))
        {
            faults.Add(text.Opens!.Place, null, $"The guard by the date leaves no day of the season from {season.From} until {season.Until}, so this window never opens.", "a guard that leaves days within the season");
        }
    }

    /// <summary>Guards that leave no day of the season make a condition that never comes.</summary>
    private void CheckComes(Place? place, Condition? condition, SeasonRule? season, string consequence)
    {
        if (place is null || condition is null || season is null || !OpeningByDate.NeverComes(condition, season)) return;
        faults.Add(place, null, $"The guard by the date leaves no day of the season from {season.From} until {season.Until}, so this window {consequence}.", "a guard that leaves days within the season");
    }

    private void CheckExclusions(IReadOnlyList<TreatmentText> treatments)
    {
        string[] ids = [.. treatments.Select(each => each.Id?.Value).OfType<string>()];
        foreach (TreatmentText text in treatments)
        {
            Placed<string>[] others = [.. (text.Excludes?.Items ?? []).Select(each => each.Treatment).OfType<Placed<string>>()];
            Names.CheckReferences(others, ids, "treatment", faults);
            Names.CheckOnce(others, faults);
            foreach (Placed<string> other in others)
            {
                if (other.Value == text.Id?.Value)
                {
                    faults.Add(other.Place, "A treatment cannot exclude itself.", "the id of another treatment");
                }
                else if (treatments.FirstOrDefault(each => each.Id?.Value == other.Value) is { } partner && text.Id is { } id && !Excludes(partner, id.Value))
                {
                    faults.Add(other.Place, $"\"{other.Value}\" does not exclude \"{id.Value}\" in return, so its notices would not warn.", $"the exclusion at both treatments: add \"{id.Value}\" to excludes of \"{other.Value}\"");
                }
            }
        }
    }

    private static bool Excludes(TreatmentText text, string other) => text.Excludes?.Items.Any(each => each.Treatment?.Value == other) ?? false;
}
