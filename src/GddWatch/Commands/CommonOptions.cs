using System.CommandLine;
using GddWatch.Commands.Output;

namespace GddWatch.Commands;

/// <summary>The options that every command takes.</summary>
internal sealed class CommonOptions
{
    public Option<string> Config { get; } = new("--config")
    {
        Description = "The folder with region.yaml, treatments.yaml, appsettings.json and the mail templates.",
        HelpName = "DIR",
        DefaultValueFactory = _ => "config",
        Recursive = true,
    };

    public Option<string> Data { get; } = new("--data")
    {
        Description = "The folder for the database and the mails.",
        HelpName = "DIR",
        DefaultValueFactory = _ => "var",
        Recursive = true,
    };

    public Option<string> Format { get; } = MakeFormat();

    public OutputFormat FormatOf(ParseResult parsed) => parsed.GetValue(Format) switch
    {
        "json" => OutputFormat.Json,
        "csv" => OutputFormat.Csv,
        _ => OutputFormat.People,
    };

    private static Option<string> MakeFormat()
    {
        Option<string> format = new("--format")
        {
            Description = "For people by default; json or csv for programs (always metric).",
            HelpName = "people|json|csv",
            DefaultValueFactory = _ => "people",
            Recursive = true,
        };
        format.AcceptOnlyFromAmong("people", "json", "csv");
        return format;
    }
}
