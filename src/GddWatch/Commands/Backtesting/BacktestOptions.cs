using System.CommandLine;

namespace GddWatch.Commands.Backtesting;

/// <summary>The options of <c>backtest</c>.</summary>
internal sealed class BacktestOptions
{
    public Option<string[]> Site { get; } = new("--site") { Description = "Only these sites, by their ids.", HelpName = "ID", AllowMultipleArgumentsPerToken = true };

    public Option<string[]> Treatment { get; } = new("--treatment") { Description = "Only these treatments, by their ids.", HelpName = "ID", AllowMultipleArgumentsPerToken = true };

    public Option<int?> From { get; } = new("--from") { Description = "The first season, by the year in which it begins.", HelpName = "YEAR" };

    public Option<int?> Until { get; } = new("--until") { Description = "The last season.", HelpName = "YEAR" };

    public Option<string?> Observed { get; } = new("--observed")
    {
        Description = "A CSV file of what was seen, with the columns site, event (a treatment's id, or what its compare-with names) and date; a row with a season and no date says that it did not come. What the journal has seen counts too.",
        HelpName = "FILE",
    };

    public Option<string> Within { get; } = new("--within") { Description = "How far an opening may lie from the day by what was seen and still be a hit.", HelpName = "DAYS", DefaultValueFactory = _ => "7 days" };

    public Option<string[]> WhatIf { get; } = new("--what-if") { Description = $"Vary what opens the windows, repeatable: {WhatIfText.Accepted}.", HelpName = "TEXT", AllowMultipleArgumentsPerToken = false };

    public Option<string?> Report { get; } = new("--report") { Description = "Writes a page with charts and tables to show to people: one file, nothing loaded from elsewhere.", HelpName = "FILE.html" };

    public Option<string> Table { get; } = MakeTable();

    public IEnumerable<Option> All => [Site, Treatment, From, Until, Observed, Within, WhatIf, Report, Table];

    private static Option<string> MakeTable()
    {
        Option<string> table = new("--table")
        {
            Description = "Which table --format csv writes.",
            HelpName = string.Join('|', BacktestTables.Names),
            DefaultValueFactory = _ => BacktestTables.Names[0],
        };
        table.AcceptOnlyFromAmong([.. BacktestTables.Names]);
        return table;
    }
}
