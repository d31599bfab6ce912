using System.CommandLine;
using GddWatch.Agronomy.Journal;
using GddWatch.Commands.Recording;
using GddWatch.Storage;
using GddWatch.Watching;

namespace GddWatch.Commands;

/// <summary>The journal: what people did and saw.</summary>
internal sealed class RecordCommand(CommonOptions common, Terminal terminal)
{
    private readonly Option<string[]> sites = new("--site") { Description = "The site's id; several are allowed.", HelpName = "ID", AllowMultipleArgumentsPerToken = true };
    private readonly Option<string?> on = new("--on") { Description = "The day, as 2026-04-12; today at the site unless given.", HelpName = "DATE" };
    private readonly Option<string?> note = new("--note") { Description = "Whatever else is worth knowing.", HelpName = "TEXT" };
    private readonly Option<string?> insteadOf = new("--instead-of") { Description = "The number of an earlier entry that this one mends; the earlier one is kept.", HelpName = "NUMBER" };

    public static Command Create(CommonOptions common, Terminal terminal) => new RecordCommand(common, terminal).Build();

    private Command Build() => new("record", "Records what was done and seen: treatments, soil-thermometer readings, sightings, mowings. Nothing recorded is ever lost.")
    {
        Done(), Reading(), Sighting(), Mowing(),
        RecordImportCommand.Create(common, terminal),
        RecordWithdrawCommand.Create(common, terminal),
        RecordListCommand.Create(common, terminal),
        RecordExportCommand.Create(common, terminal),
    };

    private Command Done()
    {
        Argument<string> treatment = new("TREATMENT") { Description = "The treatment's id." };
        Option<string?> active = new("--active") { Description = "The active ingredient, as the product names it.", HelpName = "TEXT" };
        Option<string?> noSeedUntil = new("--no-seed-until") { Description = "The first day on which the product's label allows grass seed again.", HelpName = "DATE" };
        var command = new Command("done", "A treatment that was carried out.") { treatment, sites, on, active, noSeedUntil, note, insteadOf };
        command.SetAction((parsed, stop) => RecordAsync(
            parsed,
            new EntryText { Kind = "done", Treatment = parsed.GetValue(treatment), On = parsed.GetValue(on), Active = parsed.GetValue(active), NoSeedUntil = parsed.GetValue(noSeedUntil) },
            stop));
        return command;
    }

    private Command Reading()
    {
        Option<string?> at = new("--at") { Description = "The site's day and time, as \"2026-04-12 08:00\"; the day alone is a mean of the day.", HelpName = "TIME" };
        Option<string?> depth = new("--depth") { Description = "The depth of the thermometer's tip, such as \"5 cm\" or \"2 in\".", HelpName = "DEPTH" };
        Option<string?> value = new("--value") { Description = "What it showed, such as \"51 °F\".", HelpName = "TEMPERATURE" };
        var command = new Command("reading", "A reading of a soil thermometer; later estimates at the site are corrected by it.") { sites, at, depth, value, note, insteadOf };
        command.SetAction((parsed, stop) => RecordAsync(
            parsed, new EntryText { Kind = "reading", At = parsed.GetValue(at), Depth = parsed.GetValue(depth), Value = parsed.GetValue(value) }, stop));
        return command;
    }

    private Command Sighting()
    {
        Argument<string> what = new("WHAT") { Description = "What was seen, short and plain, such as first-beetle." };
        var command = new Command("sighting", "Something seen for the first time in a season.") { what, sites, on, note, insteadOf };
        command.SetAction((parsed, stop) => RecordAsync(parsed, new EntryText { Kind = "sighting", What = parsed.GetValue(what), On = parsed.GetValue(on) }, stop));
        return command;
    }

    private Command Mowing()
    {
        var command = new Command("mowing", "A mowing.") { sites, on, note, insteadOf };
        command.SetAction((parsed, stop) => RecordAsync(parsed, new EntryText { Kind = "mowing", On = parsed.GetValue(on) }, stop));
        return command;
    }

    private async Task<int> RecordAsync(ParseResult parsed, EntryText text, CancellationToken stop)
    {
        if (Workplace.Open(parsed.GetValue(common.Config)!, terminal) is not { } place) return ExitCode.WrongUsageOrConfiguration;
        if (Keeping.Find(parsed.GetValue(common.Config)!, parsed.GetValue(common.Data)!, terminal) is not { } keeping) return ExitCode.WrongUsageOrConfiguration;
        var faults = new List<EntryFault>();
        IReadOnlyList<JournalEntry> entries = ReadEntries(parsed, text, new EntryReader(place), faults);
        long? wrong = TypedFaults.Number("instead-of", parsed.GetValue(insteadOf), faults);
        if (wrong is { } number && (await Journals.LoadHistoryAsync(keeping, stop)).All(kept => kept.Number != number))
        {
            faults.Add(new EntryFault("instead-of", parsed.GetValue(insteadOf), "There is no such entry in the journal.", "a number that `gddwatch record list` shows"));
        }

        if (faults.Count > 0) return TypedFaults.Tell(terminal, faults);
        await using Database database = await keeping.OpenAsync(stop);
        try
        {
            Tell(await new JournalStore(database).RecordAsync(entries, wrong, terminal.Clock.GetUtcNow(), stop), place);
            return ExitCode.Done;
        }
        catch (JournalNumberException fault)
        {
            terminal.Error.WriteLine(fault.Message);
            return ExitCode.WrongUsageOrConfiguration;
        }
    }

    private List<JournalEntry> ReadEntries(ParseResult parsed, EntryText text, EntryReader reader, List<EntryFault> faults)
    {
        string?[] named = [.. (parsed.GetValue(sites) ?? []).Distinct(StringComparer.Ordinal)];
        if (parsed.GetValue(insteadOf) is { } wrong && named.Length > 1)
        {
            faults.Add(new EntryFault("instead-of", wrong, "Several sites are named, and one entry is to be mended.", "one site"));
        }

        var entries = new List<JournalEntry>();
        foreach (string? site in named.DefaultIfEmpty(null))
        {
            if (reader.Read(text with { Site = site, Note = parsed.GetValue(note) }, faults) is { } entry) entries.Add(entry);
        }

        return entries;
    }

    private void Tell(IReadOnlyList<JournalOutcome> outcomes, Workplace place)
    {
        foreach (JournalOutcome outcome in outcomes)
        {
            string what = EntryWords.Of(outcome.Entry, place);
            string mended = outcome.Mended.Count == 0
                ? ""
                : $", instead of number {string.Join(" and number ", outcome.Mended)}, which {(outcome.Mended.Count == 1 ? "is" : "are")} kept in the history";
            terminal.Output.WriteLine(outcome.Change == JournalChange.AlreadyThere
                ? $"Already recorded as number {outcome.Number}{(mended.Length > 0 ? $", and stands now{mended[1..]}" : "")}: {what}.{(mended.Length > 0 ? "" : " Nothing changed.")}"
                : $"Recorded as number {outcome.Number}{mended}: {what}.");
        }
    }
}
