using System.CommandLine;
using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Treatments;
using GddWatch.Commands.Output;
using GddWatch.Configuration;
using GddWatch.Configuration.Settings;
using GddWatch.Feeds.Faults;
using GddWatch.Feeds.Gathering;
using GddWatch.Feeds.Services;
using GddWatch.Watching;

namespace GddWatch.Commands;

/// <summary>Reads configuration and feeds, reports every problem, explains every treatment, and changes nothing.</summary>
internal static class CheckCommand
{
    public static Command Create(CommonOptions common, Terminal terminal)
    {
        Option<string?> sendTest = new("--send-test") { Description = "Sends one test mail to this address by the configured channel.", HelpName = "ADDRESS" };
        var command = new Command("check", "Reads configuration and feeds, reports every problem with file, line and what would be accepted, and explains every treatment in a sentence. Changes nothing.") { sendTest };
        command.SetAction((parsed, stop) => RunAsync(
            parsed.GetValue(common.Config)!, parsed.GetValue(common.Data)!, parsed.GetValue(sendTest), common.FormatOf(parsed), terminal, stop));
        return command;
    }

    private static async Task<int> RunAsync(string config, string data, string? sendTest, OutputFormat format, Terminal terminal, CancellationToken stop)
    {
        if (sendTest is not null && !Mailing.IsAddress(sendTest))
        {
            terminal.Error.WriteLine($"--send-test: \"{sendTest}\" is not a mail address. Accepted: one such as you@example.org.");
            return ExitCode.WrongUsageOrConfiguration;
        }

        IReadOnlyList<Fault> wrong = ConfigurationFaults(config);
        if (wrong.Count > 0)
        {
            Show([.. wrong.Select(fault => ("", fault))], format, terminal, () =>
            {
                terminal.Output.WriteLine($"The configuration cannot be used: {Count(wrong.Count, "fault")}.");
                foreach (Fault fault in wrong) terminal.Output.WriteLine($"  {fault}");
            });
            return ExitCode.WrongUsageOrConfiguration;
        }

        if (Workplace.Open(config, terminal) is not { } place) return ExitCode.WrongUsageOrConfiguration;
        if (Keeping.Find(config, data, terminal) is not { } keeping) return ExitCode.WrongUsageOrConfiguration;
        if (Mailing.Open(config, data, place.Configuration, terminal) is not { } mailing) return ExitCode.WrongUsageOrConfiguration;
        IReadOnlyList<SiteWeather> gathered = await place.GatherAsync(keeping, stop);
        Show(
            [.. gathered.SelectMany(weather => weather.Faults.Select(fault => (weather.Site.Id, fault)))],
            format,
            terminal,
            () => ShowPeople(place, gathered, mailing, terminal));
        foreach (string words in (await KeptRemarks.LoadAsync(keeping, stop)).PausedInWords()) terminal.Error.WriteLine(words);
        bool bad = gathered.Any(weather => weather.Series is null || weather.Faults.Any(fault => fault.Severity != FaultSeverity.Remark));
        if (sendTest is not null && !await mailing.SendTestAsync(sendTest, place, terminal, stop)) return ExitCode.Failed;
        return bad ? ExitCode.Failed : ExitCode.Done;
    }

    /// <summary>All that is wrong in the files of the configuration: both YAML files, the settings and the mail templates.</summary>
    private static IReadOnlyList<Fault> ConfigurationFaults(string config)
    {
        string settings = Path.Combine(config, SettingsReader.File);
        return
        [
            .. ConfigurationReader.Read(config).Faults,
            .. SettingsReader.Read(config).Faults.Select(words => words.Split(" Accepted: ", 2)).Select(parts => Refused(settings, null, parts[0], parts.Length > 1 ? parts[1] : "see the README.")),
            .. Mailing.TemplateFaults(Path.Combine(config, "mail")).Select(fault => Refused(fault.File, fault.Line, fault.Problem, fault.Advice)),
        ];
    }

    private static Fault Refused(string file, int? line, string problem, string accepted) =>
        new() { Severity = FaultSeverity.Refused, File = file, Line = line, Problem = problem, Accepted = accepted };

    private static void Show(IReadOnlyList<(string Site, Fault Fault)> faults, OutputFormat format, Terminal terminal, Action showPeople)
    {
        switch (format)
        {
            case OutputFormat.Json:
                ProgramText.WriteJson(terminal.Output, new { Faults = faults.Select(each => ForPrograms(each.Site, each.Fault)) });
                break;
            case OutputFormat.Csv:
                ProgramText.WriteCsv(
                    terminal.Output,
                    ["site", "severity", "file", "line", "column", "problem", "found", "accepted"],
                    faults.Select(each => (IReadOnlyList<string?>)
                        [each.Site, Word(each.Fault.Severity), each.Fault.File, each.Fault.Line?.ToString(), each.Fault.Column, each.Fault.Problem, each.Fault.Found, each.Fault.Accepted]));
                break;
            default:
                showPeople();
                break;
        }
    }

    private static void ShowPeople(Workplace place, IReadOnlyList<SiteWeather> gathered, Mailing mailing, Terminal terminal)
    {
        TextWriter output = terminal.Output;
        output.WriteLine($"Region {place.Region.Name}: {Count(place.Region.Sites.Count, "site")}, {Count(place.Region.Recipients.Count, "recipient")}, {Count(place.Configuration.Treatments.Count, "treatment")}. The configuration reads well.");
        int dry = gathered.Count(weather => weather.Series is null);
        if (dry > 0) output.WriteLine($"But {(dry == 1 ? "1 site has" : $"{dry} sites have")} no usable weather: nothing is judged there.");
        output.WriteLine($"Mails go to {mailing.Where}.");
        output.WriteLine();
        foreach (SiteWeather weather in gathered)
        {
            string days = weather.Series is { } series
                ? $"{series.Count} days of weather, from {Wording.Day(series.FirstDay)} to {Wording.Day(series.LastDay)}"
                : "no weather";
            output.WriteLine($"{weather.Site.Name} ({weather.Site.Id}): {days}.");
            foreach (Fault fault in weather.Faults) output.WriteLine($"  {Word(fault.Severity)}: {fault}");
        }

        foreach (string terms in place.Configuration.Feeds.Values.SelectMany(feeds => feeds).OfType<ServiceFeedDefinition>().Select(feed => feed.Kind).Distinct().Select(ServiceFacts.Terms).OfType<string>()) output.WriteLine(terms);
        foreach (LocalRule rule in place.Region.Rules)
        {
            string where = rule.Sites is null ? "all sites" : string.Join(", ", rule.Sites);
            output.WriteLine($"Local rule ({rule.Source}): no {WorkKinds.Word(rule.Kind)} from {Wording.AnnualDay(rule.From)} to {Wording.AnnualDay(rule.Until)} at {where}; no notice of such work is sent then. Last reviewed on {Wording.Day(rule.Reviewed)}{(rule.Reviewed > place.Today ? ", a day that has not come yet: look at the date" : "")}.");
        }

        output.WriteLine();
        foreach (Treatment treatment in place.Configuration.Treatments) output.WriteLine($"{treatment.Id}: {TreatmentSentence.Of(treatment, place.Region.Units)}");
        if (place.Region.Remark.Length > 0) output.WriteLine($"\n{place.Region.Remark}");
    }

    private static string Count(int number, string what) => number == 1 ? $"1 {what}" : $"{number} {what}s";

    private static object ForPrograms(string site, Fault fault) => new
    {
        Site = site,
        Severity = Word(fault.Severity),
        fault.File,
        fault.Line,
        fault.Column,
        fault.Problem,
        fault.Found,
        fault.Accepted,
    };

    private static string Word(FaultSeverity severity) => severity switch
    {
        FaultSeverity.Remark => "remark",
        FaultSeverity.LeftOut => "left out",
        _ => "refused",
    };
}
