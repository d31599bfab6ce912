using System.CommandLine;
using GddWatch.Commands.Output;
using GddWatch.Commands.Recording;
using GddWatch.Storage;
using GddWatch.Watching;

namespace GddWatch.Commands;

/// <summary>Writes the journal as a table that can be read back.</summary>
internal static class RecordExportCommand
{
    public static Command Create(CommonOptions common, Terminal terminal)
    {
        Argument<string?> file = new("FILE") { Description = "Where to write; standard output unless given.", Arity = ArgumentArity.ZeroOrOne };
        Option<bool> all = new("--all") { Description = "Also what was mended or withdrawn, with its history; an import leaves such rows aside." };
        var command = new Command("export", "Writes the journal as CSV that `gddwatch record import` reads back.") { file, all };
        command.SetAction(async (parsed, stop) =>
        {
            if (Keeping.Find(parsed.GetValue(common.Config)!, parsed.GetValue(common.Data)!, terminal) is not { } keeping) return ExitCode.WrongUsageOrConfiguration;
            bool withHistory = parsed.GetValue(all);
            IReadOnlyList<KeptEntry> history = await Journals.LoadHistoryAsync(keeping, stop);
            KeptEntry[] entries = [.. history.Where(kept => withHistory || kept.IsInForce)];
            using var text = new StringWriter { NewLine = "\n" };
            if (withHistory) ProgramText.WriteCsv(text, JournalTable.ColumnsWithHistory, entries.Select(JournalTable.CellsWithHistory));
            else ProgramText.WriteCsv(text, JournalTable.Columns, entries.Select(kept => JournalTable.Cells(kept.Entry)));
            if (parsed.GetValue(file) is not { } path)
            {
                await terminal.Output.WriteAsync(text.ToString());
                return ExitCode.Done;
            }

            if (IsSomethingElse(path))
            {
                terminal.Error.WriteLine($"FILE: This file is there and is no exported journal; it was left as it is. Found: \"{path}\". Accepted: a file that is not there yet, or an earlier export.");
                return ExitCode.WrongUsageOrConfiguration;
            }

            await WriteWholeAsync(path, text.ToString(), stop);
            terminal.Output.WriteLine($"Written: {entries.Length} {(entries.Length == 1 ? "entry" : "entries")}, to {path}.");
            return ExitCode.Done;
        });
        return command;
    }

    private static bool IsSomethingElse(string path) =>
        File.Exists(path) && File.ReadLines(path).FirstOrDefault()?.StartsWith(string.Join(',', JournalTable.Columns), StringComparison.Ordinal) != true;

    /// <summary>An earlier export stands until the new one is whole.</summary>
    private static async Task WriteWholeAsync(string path, string text, CancellationToken stop)
    {
        string unfinished = $"{path}.unfinished";
        await File.WriteAllTextAsync(unfinished, text, stop);
        File.Move(unfinished, path, overwrite: true);
    }
}
