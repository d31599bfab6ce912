using System.CommandLine;
using GddWatch.Storage;
using GddWatch.Storage.Upkeep;

namespace GddWatch.Commands;

/// <summary>Looks through everything that is kept.</summary>
internal static class KeepVerifyCommand
{
    private const int MostShown = 200;

    public static Command Create(CommonOptions common, Terminal terminal)
    {
        var command = new Command("verify", "Looks through everything that is kept for damage and for what cannot be true together. Changes nothing; exit code 1 where anything is found.");
        command.SetAction(async (parsed, stop) =>
        {
            if (Keeping.Find(parsed.GetValue(common.Config)!, parsed.GetValue(common.Data)!, terminal) is not { } keeping) return ExitCode.WrongUsageOrConfiguration;
            if (!keeping.SayWhereNothingIsKept()) return ExitCode.Failed;
            await using Database database = await keeping.OpenAsync(stop);
            InspectionReport report = await new Inspection(database).RunAsync(terminal.Clock.GetUtcNow(), stop);
            foreach (string finding in report.Findings.Take(MostShown)) terminal.Output.WriteLine(finding);
            if (report.Findings.Count > MostShown) terminal.Output.WriteLine($"And {report.Findings.Count - MostShown} more.");
            terminal.Output.WriteLine(
                $"Looked at in {keeping.Place}: windows {report.Windows}, notices told {report.Notices}, mails {report.Messages}, journal entries {report.Entries}, values of days {report.Values}, values of forecasts {report.Forecasts}. "
                + (report.Findings.Count == 0 ? "All is well." : $"Found: {report.Findings.Count}."));
            return report.Findings.Count == 0 ? ExitCode.Done : ExitCode.Failed;
        });
        return command;
    }
}
