using System.CommandLine;
using GddWatch.Agronomy.Backtesting.Variants;
using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Treatments;
using GddWatch.Commands.Output;
using GddWatch.Configuration.Scalars;
using GddWatch.Configuration.Yaml;
using GddWatch.Reports;

namespace GddWatch.Commands.Backtesting;

/// <summary>What somebody asked of a backtest, checked against the configuration.</summary>
/// <param name="Sites">The sites.</param>
/// <param name="Treatments">The treatments.</param>
/// <param name="From">The first season; null is the first there is.</param>
/// <param name="Until">The last season; null is the last there is.</param>
/// <param name="Observed">The file of what was seen; null is none.</param>
/// <param name="WithinDays">The range of a hit [days].</param>
/// <param name="Variants">The variants, each with what was varied.</param>
/// <param name="Report">The page to write; null is none.</param>
/// <param name="Table">The table for CSV.</param>
internal sealed record BacktestAsked(
    IReadOnlyList<Site> Sites,
    IReadOnlyList<Treatment> Treatments,
    int? From,
    int? Until,
    string? Observed,
    int WithinDays,
    IReadOnlyList<(Treatment Variant, IReadOnlyList<Variation> Variations)> Variants,
    string? Report,
    string Table)
{
    /// <summary>Whether the course of the last year is asked for.</summary>
    public bool WithYear => Report is not null || Table == "ranges";

    /// <summary>Whether the other ways' dates are asked for; the plain table of windows does without them.</summary>
    public bool WithRivals(OutputFormat format) => format != OutputFormat.Csv || Report is not null || Table is "compared" or "rivals" or "scores";

    /// <summary>Whether nothing but the plain table of windows is asked for.</summary>
    public bool IsOfWindowsAlone(OutputFormat format) => format == OutputFormat.Csv && Report is null && Table == BacktestTables.Names[0];

    /// <summary>Whether a season is asked for.</summary>
    public bool Holds(Season season) => (From is not { } first || season.Year >= first) && (Until is not { } last || season.Year <= last);

    /// <summary>What was asked; null, with all that is wrong told on the error stream, where it cannot be meant.</summary>
    public static BacktestAsked? Read(ParseResult parsed, BacktestOptions options, Workplace place, Terminal terminal)
    {
        var problems = new List<string>();
        Site[] sites = Chosen("--site", parsed.GetValue(options.Site) ?? [], place.Region.Sites, site => site.Id, problems);
        Treatment[] treatments = Chosen("--treatment", parsed.GetValue(options.Treatment) ?? [], place.Configuration.Treatments, treatment => treatment.Id, problems);
        int? from = parsed.GetValue(options.From), until = parsed.GetValue(options.Until);
        if (until < from) problems.Add($"--until {until} is before --from {from}. Accepted: a last season at or after the first.");
        string within = parsed.GetValue(options.Within)!;
        int withinDays = UnitText.Days(within).Value is DayCount days ? days.Days : -1;
        if (withinDays < 0) problems.Add($"--within: \"{within}\" is not a number of days. Accepted: such as \"7 days\".");
        string? report = parsed.GetValue(options.Report);
        if (report is not null && Path.GetExtension(report) is not (".html" or ".htm")) problems.Add($"--report: \"{report}\" does not end in .html. Accepted: a file name such as season.html.");
        if (report is not null && Directory.Exists(report)) problems.Add($"--report: \"{report}\" is a folder. Accepted: a file name such as season.html.");
        if (report is not null && sites.Length > SeasonReport.MostSites) problems.Add($"--report: one report takes at most {SeasonReport.MostSites} sites, and these are {sites.Length}. Accepted: fewer, chosen by --site.");
        var parts = new List<IReadOnlyList<Variation>>();
        foreach (string text in parsed.GetValue(options.WhatIf) ?? [])
        {
            if (WhatIfText.Parse(text, out string problem) is { } part) parts.Add(part);
            else problems.Add($"--what-if \"{text}\": {problem} Accepted: {WhatIfText.Accepted}.");
        }

        foreach (string twice in parts.GroupBy(part => part[0].PartInWords).Where(group => group.Count() > 1).Select(group => group.Key)) problems.Add($"--what-if: {twice} is varied twice. Accepted: each part once.");
        if (parts.Aggregate(1L, (product, part) => product * part.Count) > WhatIfText.MostCombinations) problems.Add($"--what-if: these are more than {WhatIfText.MostCombinations} combinations. Accepted: fewer values.");
        if (problems.Count == 0)
        {
            IReadOnlyList<(Treatment, IReadOnlyList<Variation>)> variants = parts.Count > 0 ? VariantsOf(treatments, parts) : report is not null ? Sensitivity.Of(treatments, place.Region.Units) : [];
            if (parts.Count == 0 || variants.Count > 0)
            {
                return new BacktestAsked(sites, treatments, from, until, parsed.GetValue(options.Observed), withinDays, variants, report, parsed.GetValue(options.Table)!);
            }

            problems.Add($"--what-if: no treatment's opening has {string.Join(" and ", parts.Select(part => part[0].PartInWords))}. `gddwatch check` explains what opens each.");
        }

        foreach (string problem in problems) terminal.Error.WriteLine(problem);
        return null;
    }

    private static (Treatment, IReadOnlyList<Variation>)[] VariantsOf(IReadOnlyList<Treatment> treatments, IReadOnlyList<IReadOnlyList<Variation>> parts) =>
        [.. treatments.SelectMany(treatment => WhatIfText.Combinations(parts)
            .Select(combination => (Variant: TreatmentVariants.With(treatment, combination), combination))
            .Where(each => each.Variant is not null)
            .Select(each => (each.Variant!, each.combination)))];

    private static T[] Chosen<T>(string option, string[] ids, IReadOnlyList<T> all, Func<T, string> idOf, List<string> problems)
    {
        foreach (string id in ids.Where(id => all.All(each => idOf(each) != id))) problems.Add($"{option}: there is no \"{id}\". Accepted: {NearestWord.Hint(id, [.. all.Select(idOf)])}.");
        return [.. all.Where(each => ids.Length == 0 || ids.Contains(idOf(each)))];
    }
}
