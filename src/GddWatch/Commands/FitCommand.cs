using System.CommandLine;
using GddWatch.Agronomy.Backtesting.Fitting;
using GddWatch.Agronomy.Backtesting.Scores;
using GddWatch.Agronomy.Heat;
using GddWatch.Agronomy.Journal;
using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Treatments;
using GddWatch.Agronomy.Windows;
using GddWatch.Commands.Backtesting;
using GddWatch.Commands.Output;
using GddWatch.Configuration.Scalars;
using GddWatch.Configuration.Yaml;
using GddWatch.Feeds.Gathering;

namespace GddWatch.Commands;

/// <summary>Thresholds and base temperatures from observed dates.</summary>
internal static class FitCommand
{
    private static readonly SeasonRule WholeYear = new(AnnualDay.Of(1, 1), AnnualDay.Of(12, 31));
    private static readonly HeatSumDefinition UsualSum = new(Temperature.FromCelsius(10), null, DegreeDayMethod.SingleSine, DegreeDayCutoff.None, AnnualDay.Of(1, 1));

    public static Command Create(CommonOptions common, Terminal terminal)
    {
        var options = new FitOptions();
        var command = new Command(
            "fit",
            "Finds the threshold and the base temperature, or the days to average over, that best explain observed dates, and says how far it is off on seasons and sites left out. It prints a snippet for treatments.yaml and changes nothing.");
        command.Add(options.Name);
        foreach (Option option in options.All) command.Add(option);
        command.SetAction((parsed, stop) => RunAsync(parsed, options, common, terminal, stop));
        return command;
    }

    private static async Task<int> RunAsync(ParseResult parsed, FitOptions options, CommonOptions common, Terminal terminal, CancellationToken stop)
    {
        if (Workplace.Open(parsed.GetValue(common.Config)!, terminal) is not { } place) return ExitCode.WrongUsageOrConfiguration;
        if (Keeping.Find(parsed.GetValue(common.Config)!, parsed.GetValue(common.Data)!, terminal) is not { } keeping) return ExitCode.WrongUsageOrConfiguration;
        string name = parsed.GetValue(options.Name)!;
        Treatment? treatment = place.Configuration.Treatments.FirstOrDefault(each => each.Id == name);
        if (await Observations.ReadAsync(parsed.GetValue(options.Observed), keeping, place, terminal, stop) is not { } observed) return ExitCode.WrongUsageOrConfiguration;
        if (Models(parsed, options, treatment, terminal) is not { } models || SeasonOf(parsed, options, treatment, terminal) is not { } season) return ExitCode.WrongUsageOrConfiguration;
        if (treatment is null && observed.All.All(each => each.What != name))
        {
            string[] known = [.. place.Configuration.Treatments.Select(each => each.Id).Concat(observed.All.Select(each => each.What)).Distinct()];
            terminal.Error.WriteLine($"There is no treatment \"{name}\", and nothing of that name was seen. Accepted: {NearestWord.Hint(name, known)}.");
            return ExitCode.WrongUsageOrConfiguration;
        }

        List<FitEvent> events = Events(name, treatment, season, observed, place.Region.Sites);
        int years = events.Select(each => each.Season.Year).Distinct().Count();
        if (years < DateFit.FewestYears) return TooFew(name, years, "dates of", terminal);
        SiteWeather[] gathered = [.. (await place.GatherAsync(keeping, stop)).Where(weather => events.Any(each => each.Site == weather.Site.Id))];
        place.Report(gathered);
        var metrics = new Dictionary<string, SiteMetrics>();
        foreach (SiteWeather weather in gathered)
        {
            if (weather.AsOf(DateOnly.MaxValue) is { } known) metrics.Add(weather.Site.Id, SiteMetrics.Of(known, weather.Site, SiteJournal.Empty, []));
            else terminal.Error.WriteLine(weather.WhyMissing);
        }

        FitEvent[] withWeather = [.. events.Where(each => metrics.ContainsKey(each.Site))];
        IReadOnlyList<(DateFit? Fit, IReadOnlyList<FitEvent> Usable)> fits = await LongWork.ShowAsync(terminal, "Fitting", "models", models.Count, done => Task.Run(
            () =>
            {
                var fitted = new List<(DateFit?, IReadOnlyList<FitEvent>)>();
                foreach (DateModel model in models)
                {
                    stop.ThrowIfCancellationRequested();
                    fitted.Add(DateFitter.Fit(model, withWeather, metrics, PastSeasons.FreshDraws()));
                    done();
                }

                return fitted;
            },
            stop));
        DateFit[] good = [.. fits.Select(each => each.Fit).OfType<DateFit>()];
        if (good.Length == 0) return TooFew(name, fits.Max(each => each.Usable.Select(one => one.Season.Year).Distinct().Count()), "dates in", terminal);
        Show(name, treatment, good, parsed.GetValue(options.Observed), common.FormatOf(parsed), place.Region.Units, terminal);
        return ExitCode.Done;
    }

    private static void Show(string name, Treatment? treatment, IReadOnlyList<DateFit> fits, string? file, OutputFormat format, ReadersUnits units, Terminal terminal)
    {
        switch (format)
        {
            case OutputFormat.Json:
                ProgramText.WriteJson(terminal.Output, new OrderedDictionary<string, object> { ["fits"] = FitTables.Fits(name, fits).AsObjects(), ["events"] = FitTables.Events(fits).AsObjects() });
                break;
            case OutputFormat.Csv:
                FitTables.Fits(name, fits).WriteCsv(terminal.Output);
                break;
            default:
                terminal.Output.WriteLine($"Fitting \"{name}\" to what was seen{(treatment?.CompareWith.Seen is { Count: > 0 } seen ? $" ({string.Join(", ", seen.Select(each => $"{each.What}, {Wording.Days(each.OpensBeforeDays)} before it"))}, or the day itself under its own name)" : "")}");
                foreach (DateFit fit in fits.OrderBy(fit => fit.Best.YearLeftOutErrorDays)) FitForPeople.Show(name, fit, file is null ? "the journal" : Path.GetFileName(file), units, terminal);
                if (treatment?.Opens.Parts.Count > 1)
                {
                    terminal.Output.WriteLine();
                    terminal.Output.WriteLine("The opening has other parts beside the one that was fitted; the fit does not look at them. Try the whole by `gddwatch backtest --what-if` before it is used.");
                }

                break;
        }
    }

    private static List<FitEvent> Events(string name, Treatment? treatment, SeasonRule season, ObservedDates observed, IReadOnlyList<Site> sites)
    {
        var events = new List<FitEvent>();
        foreach (Site site in sites)
        {
            int[] years = [.. observed.All.Where(each => each.Site == site.Id && each.Day is not null).SelectMany(each => (int[])[each.Day!.Value.Year - 1, each.Day!.Value.Year, each.Day!.Value.Year + 1]).Distinct().Order()];
            foreach (int year in years)
            {
                Season each = season.BeginningIn(year, site.Hemisphere);
                DateOnly? day = treatment is not null
                    ? Target.Of(treatment, site.Id, each, observed)?.Day
                    : observed.Of(site.Id, name).Where(one => one.Day is { } seen && (one.Year is { } named ? named == year : each.Span.Contains(seen))).Min(one => one.Day);
                if (day is { } known) events.Add(new FitEvent(site.Id, each, known));
            }
        }

        return events;
    }

    private static IReadOnlyList<DateModel>? Models(ParseResult parsed, FitOptions options, Treatment? treatment, Terminal terminal)
    {
        HeatSumDefinition sum = UsualSum;
        if (parsed.GetValue(options.Heat) is { } heat)
        {
            if (HeatColumn.Parse(heat, text => UnitText.Temperature(text).Value is Temperature temperature ? temperature : null, out string problem) is not { } column)
            {
                terminal.Error.WriteLine($"--heat \"{heat}\": {problem} Accepted: {HeatColumn.Accepted}.");
                return null;
            }

            sum = column.Definition;
        }

        string depthText = parsed.GetValue(options.Depth)!;
        if (UnitText.Depth(depthText).Value is not Depth depth)
        {
            terminal.Error.WriteLine($"--depth: \"{depthText}\" is not a depth. Accepted: a number with its unit, such as \"5 cm\" or \"2 in\".");
            return null;
        }

        string[] names = parsed.GetValue(options.Model) ?? [];
        if (names.Length == 0 && parsed.GetValue(options.Heat) is null && treatment is not null && FitModels.OfOpening(treatment) is { } own) return [own];
        if (names.Length == 0) names = parsed.GetValue(options.Heat) is null ? [.. FitModels.Names] : ["heat-sum"];
        return [.. names.Distinct(StringComparer.Ordinal).Select(each => FitModels.Named(each, sum, depth, parsed.GetValue(options.Falls)))];
    }

    private static SeasonRule? SeasonOf(ParseResult parsed, FitOptions options, Treatment? treatment, Terminal terminal)
    {
        if (parsed.GetValue(options.Season) is not { } text) return treatment?.Season ?? WholeYear;
        string[] ends = text.Split(" to ", StringSplitOptions.TrimEntries);
        if (ends is [{ } first, { } last] && PlainText.AnnualDay(first).Value is AnnualDay from && PlainText.AnnualDay(last).Value is AnnualDay until && from != until) return new SeasonRule(from, until);
        terminal.Error.WriteLine($"--season: \"{text}\" is not a season. Accepted: two days of the year, written for the north, such as \"01-01 to 07-31\".");
        return null;
    }

    private static int TooFew(string name, int years, string of, Terminal terminal)
    {
        terminal.Error.WriteLine($"\"{name}\" has {of} {(years == 1 ? "1 season" : $"{years} seasons")} that can be used; a fit needs at least {DateFit.FewestYears}, and {Agronomy.Backtesting.Bootstrap.FewGroups} to say much. Nothing was fitted.");
        return ExitCode.Failed;
    }
}
