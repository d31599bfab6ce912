using System.CommandLine;
using GddWatch.Agronomy.Journal;
using GddWatch.Commands.Output;
using GddWatch.Commands.Recording;
using GddWatch.Feeds.Faults;
using GddWatch.Storage;
using GddWatch.Watching;

namespace GddWatch.Commands;

/// <summary>The journal: what people did and saw.</summary>
internal sealed class RecordCommand(CommonOptions common, Terminal terminal)
{
    private readonly Option<string[]> sites = new("--site") { Description = "The site's id; several are allowed.", HelpName = "ID", AllowMultipleArgumentsPerToken = true };
    private readonly Option<string?> on = new("--on") { Description = "The day, as 2026-04-12; today unless given.", HelpName = "DATE" };
    private readonly Option<string?> note = new("--note") { Description = "Whatever else is worth knowing.", HelpName = "TEXT" };
    private readonly Option<long?> insteadOf = new("--instead-of") { Description = "The number of an earlier entry that this one mends; the earlier one is kept.", HelpName = "NUMBER" };

    public static Command Create(CommonOptions common, Terminal terminal) => new RecordCommand(common, terminal).Build();

    private Command Build() => new("record", "Records what was done and seen: treatments, soil-thermometer readings, sightings, mowings. Nothing recorded is ever lost.")
    {
        Done(), Reading(), Sighting(), Mowing(), Import(), Withdraw(), List(), Export(),
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

    private Command Import()
    {
        Argument<string> file = new("FILE") { Description = $"A CSV file with a header of {string.Join(", ", JournalTable.Columns)}; columns that are not needed may be left out." };
        var command = new Command("import", "Entries from a CSV file. Rows that read well are recorded, the others are told together; importing the mended file again changes nothing for rows already there.") { file };
        command.SetAction((parsed, stop) => ImportAsync(parsed, parsed.GetValue(file)!, stop));
        return command;
    }

    private Command Withdraw()
    {
        Argument<long> number = new("NUMBER") { Description = "The entry's number, as `record list` shows it." };
        Option<string> because = new("--because") { Description = "Why, in a sentence.", HelpName = "TEXT", Required = true };
        var command = new Command("withdraw", "Withdraws an entry that should not stand; it is kept with the reason.") { number, because };
        command.SetAction((parsed, stop) => WithDatabaseAsync(parsed, async (place, database) =>
        {
            KeptEntry kept = await new JournalStore(database).WithdrawAsync(parsed.GetValue(number), parsed.GetValue(because)!, terminal.Clock.GetUtcNow(), stop);
            terminal.Output.WriteLine($"Withdrawn: number {kept.Number}, {EntryWords.Of(kept.Entry, place)}. It is kept in the history.");
            return ExitCode.Done;
        }, stop));
        return command;
    }

    private Command List()
    {
        Option<bool> all = new("--all") { Description = "Also what was mended or withdrawn." };
        Option<string?> site = new("--site") { Description = "One site alone.", HelpName = "ID" };
        var command = new Command("list", "Shows the journal with the numbers of its entries.") { all, site };
        command.SetAction((parsed, stop) => WithDatabaseAsync(parsed, async (place, database) =>
        {
            IReadOnlyList<KeptEntry> entries = await LoadAsync(database, parsed.GetValue(all), parsed.GetValue(site), stop);
            switch (common.FormatOf(parsed))
            {
                case OutputFormat.Json:
                    ProgramText.WriteJson(terminal.Output, entries.Select(ForPrograms));
                    break;
                case OutputFormat.Csv:
                    ProgramText.WriteCsv(terminal.Output, JournalTable.ColumnsWithHistory, entries.Select(JournalTable.CellsWithHistory));
                    break;
                default:
                    foreach (KeptEntry kept in entries) terminal.Output.WriteLine($"{kept.Number,5}  {EntryWords.Of(kept.Entry, place)}{History(kept)}");
                    if (entries.Count == 0) terminal.Output.WriteLine("Nothing is recorded. That says nothing of what was done.");
                    break;
            }

            return ExitCode.Done;
        }, stop));
        return command;
    }

    private Command Export()
    {
        Argument<string?> file = new("FILE") { Description = "Where to write; standard output unless given.", Arity = ArgumentArity.ZeroOrOne };
        Option<bool> all = new("--all") { Description = "Also what was mended or withdrawn, with its history; an import leaves those columns aside." };
        var command = new Command("export", "Writes the journal as CSV that `record import` reads back.") { file, all };
        command.SetAction((parsed, stop) => WithDatabaseAsync(parsed, async (_, database) =>
        {
            IReadOnlyList<KeptEntry> entries = await LoadAsync(database, parsed.GetValue(all), null, stop);
            using var text = new StringWriter { NewLine = "\n" };
            if (parsed.GetValue(all)) ProgramText.WriteCsv(text, JournalTable.ColumnsWithHistory, entries.Select(JournalTable.CellsWithHistory));
            else ProgramText.WriteCsv(text, JournalTable.Columns, entries.Select(kept => JournalTable.Cells(kept.Entry)));
            if (parsed.GetValue(file) is { } path) await File.WriteAllTextAsync(path, text.ToString(), stop);
            else await terminal.Output.WriteAsync(text.ToString());
            return ExitCode.Done;
        }, stop));
        return command;
    }

    private Task<int> RecordAsync(ParseResult parsed, EntryText text, CancellationToken stop) => WithDatabaseAsync(parsed, async (place, database) =>
    {
        string[] named = parsed.GetValue(sites) ?? [];
        var faults = new List<EntryFault>();
        var reader = new EntryReader(place);
        JournalEntry?[] entries = [.. (named.Length == 0 ? [null] : named.Distinct(StringComparer.Ordinal).Cast<string?>())
            .Select(site => reader.Read(text with { Site = site, Note = parsed.GetValue(note) }, faults))];
        if (parsed.GetValue(insteadOf) is not null && entries.Length > 1) faults.Add(new EntryFault("instead-of", null, "Several sites are named, and one entry is to be mended.", "one site"));
        if (faults.Count > 0)
        {
            terminal.Error.WriteLine("Nothing was recorded:");
            foreach (EntryFault fault in faults.Distinct())
            {
                string name = fault.Part is "treatment" or "what" or "kind" ? fault.Part.ToUpperInvariant() : $"--{fault.Part}";
                terminal.Error.WriteLine($"  {name}: {fault.Problem}{(fault.Found is { Length: > 0 } found ? $" Found: \"{found}\"." : "")} Accepted: {fault.Accepted}.");
            }

            return ExitCode.WrongUsageOrConfiguration;
        }

        Tell(await new JournalStore(database).RecordAsync([.. entries.OfType<JournalEntry>()], parsed.GetValue(insteadOf), terminal.Clock.GetUtcNow(), stop), place);
        return ExitCode.Done;
    }, stop);

    private Task<int> ImportAsync(ParseResult parsed, string path, CancellationToken stop) => WithDatabaseAsync(parsed, async (place, database) =>
    {
        var file = new JournalFile(path);
        var reader = new EntryReader(place);
        var entries = new List<JournalEntry>();
        foreach ((int line, EntryText text) in file.Read())
        {
            var faults = new List<EntryFault>();
            if (reader.Read(text, faults) is { } entry) entries.Add(entry);
            foreach (EntryFault fault in faults) file.Add(line, fault);
        }

        IReadOnlyList<JournalOutcome> outcomes = await new JournalStore(database).RecordAsync(entries, null, terminal.Clock.GetUtcNow(), stop);
        int there = outcomes.Count(outcome => outcome.AlreadyThere);
        terminal.Output.WriteLine($"Recorded: {outcomes.Count - there}. Already there: {there}. Left out: {file.Faults.Select(fault => fault.Line).Distinct().Count()}.");
        foreach (Fault fault in file.Faults.OrderBy(fault => fault.Line)) terminal.Error.WriteLine(fault);
        if (file.Faults.Count > 0) terminal.Error.WriteLine("Mend these and import the file again: rows that are already there change nothing.");
        return file.Faults.Count > 0 ? ExitCode.Failed : ExitCode.Done;
    }, stop);

    private void Tell(IReadOnlyList<JournalOutcome> outcomes, Workplace place)
    {
        foreach (JournalOutcome outcome in outcomes)
        {
            string what = EntryWords.Of(outcome.Entry, place);
            terminal.Output.WriteLine(outcome switch
            {
                { AlreadyThere: true } => $"Already recorded as number {outcome.Number}: {what}. Nothing changed.",
                { Mended: { } mended } => $"Recorded as number {outcome.Number}, instead of number {mended}, which is kept in the history: {what}.",
                _ => $"Recorded as number {outcome.Number}: {what}.",
            });
        }
    }

    private static async Task<IReadOnlyList<KeptEntry>> LoadAsync(Database database, bool all, string? site, CancellationToken stop) =>
        [.. (await new JournalStore(database).LoadHistoryAsync(stop)).Where(kept => (all || kept.IsInForce) && (site is null || kept.Entry.SiteId == site))];

    private static object ForPrograms(KeptEntry kept) =>
        JournalTable.ColumnsWithHistory.Zip(JournalTable.CellsWithHistory(kept)).ToDictionary(each => each.First, each => each.Second, StringComparer.Ordinal);

    private static string History(KeptEntry kept) => kept switch
    {
        { ReplacedBy: { } by } => $" - mended by number {by}",
        { WithdrawnAt: not null } => $" - withdrawn: {kept.WithdrawnBecause}",
        _ => "",
    };

    private async Task<int> WithDatabaseAsync(ParseResult parsed, Func<Workplace, Database, Task<int>> act, CancellationToken stop)
    {
        if (Workplace.Open(parsed.GetValue(common.Config)!, terminal) is not { } place) return ExitCode.WrongUsageOrConfiguration;
        await using Database database = await Database.OpenAsync(DataFolder.Database(parsed.GetValue(common.Data)!), terminal.Clock, stop);
        return await act(place, database);
    }
}
