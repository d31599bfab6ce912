using System.CommandLine;
using GddWatch.Commands.Recording;
using GddWatch.Storage;
using GddWatch.Watching;

namespace GddWatch.Commands;

/// <summary>Takes an entry of the journal out of what is in force, and keeps it with the reason.</summary>
internal static class RecordWithdrawCommand
{
    public static Command Create(CommonOptions common, Terminal terminal)
    {
        Argument<string> number = new("NUMBER") { Description = "The entry's number, as `gddwatch record list` shows it." };
        Option<string> because = new("--because") { Description = "Why, in a sentence.", HelpName = "TEXT", Required = true };
        var command = new Command("withdraw", "Withdraws an entry that should not stand; it is kept with the reason.") { number, because };
        command.SetAction(async (parsed, stop) =>
        {
            if (Workplace.Open(parsed.GetValue(common.Config)!, terminal) is not { } place) return ExitCode.WrongUsageOrConfiguration;
            if (Keeping.Find(parsed.GetValue(common.Config)!, parsed.GetValue(common.Data)!, terminal) is not { } keeping) return ExitCode.WrongUsageOrConfiguration;
            var faults = new List<EntryFault>();
            long? wrong = TypedFaults.Number("number", parsed.GetValue(number), faults);
            string? why = EntryReader.ReadText("because", parsed.GetValue(because), faults);
            if (string.IsNullOrEmpty(why)) faults.Add(new EntryFault("because", why, "The reason is missing.", "why it should not stand, in a sentence"));
            if (faults.Count > 0 || wrong is null) return TypedFaults.Tell(terminal, faults);
            try
            {
                await using Database database = await keeping.OpenAsync(stop);
                KeptEntry kept = await new JournalStore(database).WithdrawAsync(wrong.Value, why!, terminal.Clock.GetUtcNow(), stop);
                terminal.Output.WriteLine($"Withdrawn: number {kept.Number}, {EntryWords.Of(kept.Entry, place)}. It is kept in the history.");
                return ExitCode.Done;
            }
            catch (JournalNumberException fault)
            {
                terminal.Error.WriteLine(fault.Message);
                return ExitCode.WrongUsageOrConfiguration;
            }
        });
        return command;
    }
}
