using System.CommandLine;
using GddWatch.Commands.Output;
using GddWatch.Commands.Recording;
using GddWatch.Configuration.Yaml;
using GddWatch.Storage;
using GddWatch.Watching;

namespace GddWatch.Commands;

/// <summary>Shows the journal.</summary>
internal static class RecordListCommand
{
    public static Command Create(CommonOptions common, Terminal terminal)
    {
        Option<bool> all = new("--all") { Description = "Also what was mended or withdrawn." };
        Option<string?> site = new("--site") { Description = "One site alone.", HelpName = "ID" };
        var command = new Command("list", "Shows the journal with the numbers of its entries.") { all, site };
        command.SetAction(async (parsed, stop) =>
        {
            if (Workplace.Open(parsed.GetValue(common.Config)!, terminal) is not { } place) return ExitCode.WrongUsageOrConfiguration;
            if (Keeping.Find(parsed.GetValue(common.Config)!, parsed.GetValue(common.Data)!, terminal) is not { } keeping) return ExitCode.WrongUsageOrConfiguration;
            IReadOnlyList<KeptEntry> history = await Journals.LoadHistoryAsync(keeping, stop);
            string? named = parsed.GetValue(site);
            // A site that is no longer configured keeps what was recorded of it.
            string[] known = [.. place.Region.Sites.Select(each => each.Id).Union(history.Select(kept => kept.Entry.SiteId))];
            if (named is not null && !known.Contains(named))
            {
                terminal.Error.WriteLine($"--site: There is no such site. Found: \"{named}\". Accepted: {NearestWord.Hint(named, known)}.");
                return ExitCode.WrongUsageOrConfiguration;
            }

            KeptEntry[] shown = [.. history.Where(kept => (parsed.GetValue(all) || kept.IsInForce) && (named is null || kept.Entry.SiteId == named))];
            Write(shown, common.FormatOf(parsed), terminal.Output, place);
            return ExitCode.Done;
        });
        return command;
    }

    private static void Write(KeptEntry[] entries, OutputFormat format, TextWriter output, Workplace place)
    {
        switch (format)
        {
            case OutputFormat.Json:
                ProgramText.WriteJson(output, entries.Select(JournalTable.ForPrograms));
                break;
            case OutputFormat.Csv:
                ProgramText.WriteCsv(output, JournalTable.ColumnsWithHistory, entries.Select(JournalTable.CellsWithHistory));
                break;
            default:
                foreach (KeptEntry kept in entries) output.WriteLine($"{kept.Number,5}  {EntryWords.Of(kept.Entry, place)}{(kept.IsInForce ? "" : $" - {kept.Fate}")}");
                if (entries.Length == 0) output.WriteLine("Nothing is recorded. That says nothing of what was done.");
                break;
        }
    }
}
