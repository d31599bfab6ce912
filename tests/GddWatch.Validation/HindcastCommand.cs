using System.Collections.Concurrent;
using System.Globalization;
using System.Text;
using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Treatments;
using GddWatch.Agronomy.Treatments.Conditions;
using GddWatch.Configuration;
using GddWatch.Validation.Hindcasts;
using GddWatch.Validation.Windows;

namespace GddWatch.Validation;

/// <summary>Says what would have been said of the days ahead in every season of every station, each season left out in turn, and scores it.</summary>
internal static class HindcastCommand
{
    /// <summary>The 5-day mean of the soil at 5 cm passes 10 °C and holds three days, from 2 January on.</summary>
    private static readonly Treatment SoilPasses10C = new()
    {
        Id = "measured-soil-passes-10c",
        Name = "Measured soil passes 10 °C",
        Turf = [TurfType.CoolSeason, TurfType.WarmSeason],
        Season = new SeasonRule(AnnualDay.Of(1, 2), AnnualDay.Of(10, 29)),
        Opens = new SoilTemperatureCondition(Depth.FromCentimetres(5), 5, Passing.RisesAbove, Temperature.FromCelsius(10), new Holding(3, 3)),
    };

    public static async Task RunAsync(string? configuration, string weather, string outFolder, int threads, CancellationToken stop)
    {
        IReadOnlyList<Treatment> treatments = [], others = [];
        if (configuration is not null)
        {
            ConfigurationReading reading = ConfigurationReader.Read(configuration);
            if (reading.Configuration is not { } read) throw new InvalidDataException(string.Join('\n', reading.Faults));
            treatments = [.. read.Treatments.Where(treatment => WhyNotScored(treatment) is null)];
            others = [.. read.Treatments.Except(treatments)];
        }

        IReadOnlyList<StationWeather> stations = await StationReader.ReadAsync(Path.Combine(weather, "uscrn-daily"), stop);
        Directory.CreateDirectory(outFolder);
        var text = new StringWriter(CultureInfo.InvariantCulture);
        text.WriteLine($"{stations.Count} stations, {stations.Count(station => station.IsHumid)} of them humid; each season left out in turn. The forecast is made up: the true seven days plus an error that grows with the days ahead, {StationHindcast.Draws} of them for each issue.");
        text.WriteLine("Fair scores. Skill is against the dates of the other seasons that were still to come. Chosen on: the half of the stations on which the fading was fitted; tried on: the other half; the spread and the smoothing were chosen with both in sight.");
        using var csv = new StreamWriter(Path.Combine(outFolder, "hindcast.csv"), false, new UTF8Encoding(false));
        await csv.WriteLineAsync("what,forecast,station,humid,season,lead_days,truth_days,median_days,first_days,last_days,chance_7,chance_14,never,crps,climate_crps");
        Part(text, csv, SoilPasses10C, Run(stations, SoilPasses10C, SoilSource.Measured, threads, alsoUnlinked: true, stop), inFull: true);
        var rows = new List<string>();
        foreach (Treatment treatment in treatments)
        {
            HindcastOfStation scored = Run(stations, treatment, SoilSource.Estimated, threads, alsoUnlinked: false, stop);
            Part(text, csv, treatment, scored, inFull: false);
            rows.Add(Overview(treatment, scored));
        }

        if (rows.Count > 0)
        {
            text.WriteLine("\n## All treatments, on estimated soil, at the humid stations\n\nSkill, and how often the 80 % range held the day (and what it stated):\n");
            text.WriteLine("treatment | issues, 14 days before | without a forecast, 14 days before | with one | without, 7 days before | with\n---|---|---|---|---|---");
            foreach (string row in rows) text.WriteLine(row);
            text.WriteLine();
        }

        foreach (Treatment other in others) text.WriteLine($"Not scored: {other.Id}, {WhyNotScored(other)}.");
        Console.Out.Write(text);
        await File.WriteAllTextAsync(Path.Combine(outFolder, "hindcast.md"), text.ToString(), new UTF8Encoding(false), stop);
    }

    /// <summary>Why what is said of a treatment's days ahead cannot be held against weather alone; null where it can.</summary>
    private static string? WhyNotScored(Treatment treatment) => treatment.BulletinOnly
        ? "which the bulletin alone tells of: nothing is said of its days ahead"
        : treatment.Opens.NeededRecords.Count > 0
        ? $"which follows a record of {string.Join(", ", treatment.Opens.NeededRecords)}: no station has any"
        : null;

    /// <summary>One row for a treatment: skill, held and stated, a fortnight and a week before.</summary>
    private static string Overview(Treatment treatment, HindcastOfStation scored)
    {
        ScoredIssue[] At(IReadOnlyList<ScoredIssue> issues, int lead) => [.. issues.Where(issue => issue.IsHumid && issue.LeadDays == lead)];
        string cells = string.Join(" | ", from lead in (int[])[14, 7] from issues in (IReadOnlyList<ScoredIssue>[])[scored.Without, scored.With] select HindcastFigures.Of(At(issues, lead))?.InShort() ?? "-");
        return $"{treatment.Id} | {At(scored.Without, 14).Length} | {cells}";
    }

    private static HindcastOfStation Run(IReadOnlyList<StationWeather> stations, Treatment treatment, SoilSource soil, int threads, bool alsoUnlinked, CancellationToken stop)
    {
        int[] hoods = [.. stations.Select(station => station.Neighbourhood).Distinct().Order()];
        var results = new ConcurrentDictionary<int, HindcastOfStation>();
        Parallel.For(0, stations.Count, new ParallelOptions { MaxDegreeOfParallelism = threads, CancellationToken = stop }, i =>
            // Stations that share their weather belong to the same half.
            results[i] = new StationHindcast(stations[i], Array.IndexOf(hoods, stations[i].Neighbourhood) % 2, soil).Run(treatment, alsoUnlinked));
        return HindcastOfStation.Together([.. results.OrderBy(each => each.Key).Select(each => each.Value)]);
    }

    private static void Part(StringWriter text, StreamWriter csv, Treatment treatment, HindcastOfStation scored, bool inFull)
    {
        text.WriteLine($"\n## {treatment.Id}\n");
        text.WriteLine($"forecast | stations | days before | {HindcastFigures.Heads}\n---|---|---|{HindcastFigures.Rule}");
        foreach ((string name, IReadOnlyList<ScoredIssue> issues) in scored.Kinds.Where(kind => kind.Issues.Count > 0))
        {
            foreach (ScoredIssue issue in issues) Row(csv, treatment, name, issue);
            foreach (int lead in StationHindcast.Leads)
            {
                ScoredIssue[] humid = [.. issues.Where(issue => issue.LeadDays == lead && issue.IsHumid)];
                if (HindcastFigures.Of(humid) is { } all) text.WriteLine($"{name} | humid | {lead} | {all.Row()}");
                if (inFull && HindcastFigures.Of([.. humid.Where(issue => issue.Half == 0)]) is { } chosen) text.WriteLine($"{name} | humid, chosen on | {lead} | {chosen.Row()}");
                if (inFull && HindcastFigures.Of([.. humid.Where(issue => issue.Half == 1)]) is { } tried) text.WriteLine($"{name} | humid, tried on | {lead} | {tried.Row()}");
                if (HindcastFigures.Of([.. issues.Where(issue => issue.LeadDays == lead && !issue.IsHumid)]) is { } dry) text.WriteLine($"{name} | dry | {lead} | {dry.Row()}");
            }
        }

        text.WriteLine("\nStated chances of opening within 7 and 14 days, all leads and stations: stated → came true (how many)");
        foreach ((string name, IReadOnlyList<ScoredIssue> issues) in scored.Kinds.Where(kind => kind.Issues.Count > 0))
        {
            text.WriteLine($"forecast {name}: about 20 %: {HindcastFigures.CameTrue(issues, 0.2)}; about 50 %: {HindcastFigures.CameTrue(issues, 0.5)}; about 80 %: {HindcastFigures.CameTrue(issues, 0.8)}");
        }
    }

    private static void Row(StreamWriter csv, Treatment treatment, string forecast, ScoredIssue issue)
    {
        (int first, int? last) = issue.Said.Range();
        csv.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"{treatment.Id},{forecast},{issue.Station},{issue.IsHumid},{issue.Season},{issue.LeadDays},{issue.Truth},{issue.Said.Quantile(0.5)},{first},{last},{issue.Said.By(7):0.000},{issue.Said.By(14):0.000},{issue.Said.Never:0.000},{issue.Crps:0.000},{issue.ClimateCrps:0.000}"));
    }
}
