using System.CommandLine;
using GddWatch.Storage;

namespace GddWatch.Commands;

/// <summary>Has an address tried again that was paused because it refused mails.</summary>
internal static class ResumeCommand
{
    public static Command Create(CommonOptions common, Terminal terminal)
    {
        Argument<string> address = new("address") { Description = "The address, as in region.yaml.", HelpName = "ADDRESS" };
        var command = new Command("resume", "Has an address tried again that was paused because it refused several mails for good. The next daily pass tells it how things stand then.") { address };
        command.SetAction((parsed, stop) => RunAsync(parsed.GetValue(common.Config)!, parsed.GetValue(common.Data)!, parsed.GetValue(address)!, terminal, stop));
        return command;
    }

    private static async Task<int> RunAsync(string config, string data, string address, Terminal terminal, CancellationToken stop)
    {
        if (Keeping.Find(config, data, terminal) is not { } keeping) return ExitCode.WrongUsageOrConfiguration;
        if (await keeping.ReadAsync(false, database => new RefusingAddresses(database).ResumeAsync(address, terminal.Clock.GetUtcNow(), stop), stop))
        {
            terminal.Output.WriteLine($"{address} is tried again from the next daily pass on, and told how things stand then.");
            return ExitCode.Done;
        }

        terminal.Error.WriteLine($"{address} is not paused here. `gddwatch status` names the addresses that are.");
        return ExitCode.Failed;
    }
}
