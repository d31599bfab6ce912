using System.CommandLine;
using GddWatch.Agronomy.Journal;
using GddWatch.Commands.Recording;
using GddWatch.Feeds.Faults;
using GddWatch.Storage;
using GddWatch.Watching;

namespace GddWatch.Commands;

/// <summary>Reads a file into the journal: the good rows are recorded, all faults told at once, and the mended file can be given again.</summary>
internal sealed class RecordImportCommand(CommonOptions common, Terminal terminal)
{
    private readonly Argument<string> path = new("FILE")
    {
        Description = $"A CSV file with a header of {string.Join(", ", JournalTable.Columns)}, in any order; columns that are not needed may be left out.",
    };

    public static Command Create(CommonOptions common, Terminal terminal) => new RecordImportCommand(common, terminal).Build();

    private Command Build()
    {
        var command = new Command("import", "Entries from a CSV file. Rows that read well are recorded, the others are told together; importing the mended file again changes nothing for rows already there.") { path };
        command.SetAction(ImportAsync);
        return command;
    }

    private async Task<int> ImportAsync(ParseResult parsed, CancellationToken stop)
    {
        if (Workplace.Open(parsed.GetValue(common.Config)!, terminal) is not { } place) return ExitCode.WrongUsageOrConfiguration;
        if (Keeping.Find(parsed.GetValue(common.Config)!, parsed.GetValue(common.Data)!, terminal) is not { } keeping) return ExitCode.WrongUsageOrConfiguration;
        var file = new JournalFile(parsed.GetValue(path)!);
        IReadOnlyList<(int Line, JournalEntry Entry)> rows = file.ReadEntries(new EntryReader(place));
        IReadOnlyList<JournalOutcome> outcomes = [];
        if (rows.Count > 0)
        {
            await using Database database = await keeping.OpenAsync(stop);
            outcomes = await new JournalStore(database).ImportAsync([.. rows.Select(row => row.Entry)], terminal.Clock.GetUtcNow(), stop);
        }

        if (file.HasHeader) TellCounts(outcomes, file);
        else terminal.Error.WriteLine("Nothing was recorded:");
        for (int i = 0; i < outcomes.Count; i++)
        {
            if (outcomes[i].Earlier is { } earlier) TellLeftAside(rows[i].Line, earlier, place);
        }

        foreach (Fault fault in file.Faults.OrderBy(fault => fault.Line)) terminal.Error.WriteLine(fault);
        if (file.Faults.Count == 0) return ExitCode.Done;
        terminal.Error.WriteLine("Mend these and import the file again: rows that are already there change nothing.");
        return ExitCode.Failed;
    }

    private void TellCounts(IReadOnlyList<JournalOutcome> outcomes, JournalFile file)
    {
        int Count(JournalChange change) => outcomes.Count(outcome => outcome.Change == change);
        int mending = outcomes.Count(outcome => outcome.Mended.Count > 0);
        string mended = mending == 0 ? "" : $", of which {mending} in the place of an earlier entry, which is kept in the history";
        int aside = Count(JournalChange.LeftAside) + file.RowsOfHistory;
        string left = aside == 0 ? "" : $" Mended or withdrawn before, and left so: {aside}.";
        int faulty = file.Faults.Select(fault => fault.Line).Distinct().Count();
        terminal.Output.WriteLine($"Recorded: {Count(JournalChange.Recorded)}{mended}. Already there: {Count(JournalChange.AlreadyThere)}. Left out: {faulty}.{left}");
    }

    private void TellLeftAside(int line, KeptEntry earlier, Workplace place) => terminal.Error.WriteLine(
        $"Line {line}, {EntryWords.Of(earlier.Entry, place)}, was recorded as number {earlier.Number} and then {earlier.Fate}; it was left so. "
        + $"If it should stand again, say so with `gddwatch record {JournalKinds.Word(earlier.Entry)}`.");
}
