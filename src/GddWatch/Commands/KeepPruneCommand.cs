using System.CommandLine;
using System.Globalization;
using GddWatch.Agronomy.Treatments;
using GddWatch.Storage;
using GddWatch.Storage.Upkeep;

namespace GddWatch.Commands;

/// <summary>Takes out what is old and no longer needed.</summary>
internal static class KeepPruneCommand
{
    private static readonly string Accepted = $"a number of years from {Pruning.YoungestYears} on, such as \"5 years\"; what is younger is needed to know what was told";

    public static Command Create(CommonOptions common, Terminal terminal)
    {
        Option<string> age = new("--older-than") { Description = "How old, such as \"5 years\".", HelpName = "AGE", Required = true };
        Option<bool> dryRun = new("--dry-run") { Description = "Says what would be taken out, and takes out nothing." };
        var command = new Command(
            "prune",
            "Takes out old mails that were delivered or refused for good, old forecasts, and old values that their source has changed since. Never the journal, the windows, a value that stands, or what judging needs.") { age, dryRun };
        command.SetAction(async (parsed, stop) =>
        {
            DateOnly today = DateOnly.FromDateTime(terminal.Clock.GetUtcNow().UtcDateTime);
            if (Years(parsed.GetValue(age)!) is not { } years || years >= today.Year)
            {
                terminal.Error.WriteLine($"--older-than: This is not an age that can be taken out. Found: \"{parsed.GetValue(age)}\". Accepted: {Accepted}.");
                return ExitCode.WrongUsageOrConfiguration;
            }

            if (Keeping.Find(parsed.GetValue(common.Config)!, parsed.GetValue(common.Data)!, terminal) is not { } keeping) return ExitCode.WrongUsageOrConfiguration;
            if (!keeping.SayWhereNothingIsKept()) return ExitCode.Failed;
            await using Database database = await keeping.OpenAsync(stop);
            var pruning = new Pruning(database);
            DateOnly before = today.AddYears(-years);
            bool isTrial = parsed.GetValue(dryRun);
            Pruned pruned = isTrial ? await pruning.TryAsync(before, today, stop) : await pruning.RunAsync(before, today, stop);
            terminal.Output.WriteLine(
                $"{(isTrial ? "Would be taken out" : "Taken out")}, from before {Wording.Day(before)}: mails {pruned.Messages} with the {pruned.Notices} notices in them, values of forecasts {pruned.ForecastValues}, values that their source has changed since {pruned.ReplacedValues}. "
                + (isTrial ? "Nothing was changed." : "The journal, the windows and every value that stands are as they were."));
            return ExitCode.Done;
        });
        return command;
    }

    private static int? Years(string text)
    {
        string[] words = text.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        return words is [var number, "years"] && int.TryParse(number, NumberStyles.None, CultureInfo.InvariantCulture, out int years) && years >= Pruning.YoungestYears ? years : null;
    }
}
