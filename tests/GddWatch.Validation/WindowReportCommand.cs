using System.Globalization;
using System.Text;
using GddWatch.Agronomy.Treatments;
using GddWatch.Configuration;
using GddWatch.Validation.Windows;

namespace GddWatch.Validation;

/// <summary>Judges the treatments of a configuration over all stations and seasons: how far estimated and measured soil lie apart, and how often windows open again.</summary>
internal static class WindowReportCommand
{
    private const int WorstStations = 8;
    private const int WorstSeasons = 12;

    public static async Task RunAsync(string configuration, string weather, string outFolder, CancellationToken stop)
    {
        ConfigurationReading reading = ConfigurationReader.Read(configuration);
        if (reading.Configuration is not { } read) throw new InvalidDataException(string.Join('\n', reading.Faults));
        IReadOnlyList<StationWeather> stations = await StationReader.ReadAsync(Path.Combine(weather, "uscrn-daily"), stop);
        Directory.CreateDirectory(outFolder);
        UTF8Encoding utf8 = new(encoderShouldEmitUTF8Identifier: false);
        await using StreamWriter seasons = new(Path.Combine(outFolder, "windows.csv"), false, utf8);
        await using StreamWriter curves = new(Path.Combine(outFolder, "curves.csv"), false, utf8);
        SeasonTable.Header(seasons);
        SoilCurves.Header(curves);
        var text = new StringWriter(CultureInfo.InvariantCulture);
        text.WriteLine($"{stations.Count} stations, {stations.Count(station => station.IsHumid)} of them humid (600 mm of rain a year or more), read by the service's own feed.");
        text.WriteLine($"A season is compared where both windows opened on days that are certain and the measured soil at 5 cm has a value on each of the {OpeningPair.WholeDaysBefore} days before the earlier opening and up to the later.");
        foreach (Treatment treatment in read.Treatments)
        {
            OpeningPair[] pairs = [.. stations.SelectMany(station => OpeningPair.Of(station, treatment))];
            SeasonTable.Write(seasons, pairs);
            Part(text, curves, treatment, pairs);
        }

        Console.Out.Write(text);
        await File.WriteAllTextAsync(Path.Combine(outFolder, "windows.txt"), text.ToString(), utf8, stop);
    }

    private static void Part(TextWriter text, TextWriter curves, Treatment treatment, OpeningPair[] pairs)
    {
        text.WriteLine($"\n{treatment.Id}");
        foreach (bool isHumid in (bool[])[true, false])
        {
            OpeningPair[] group = [.. pairs.Where(pair => pair.Station.IsHumid == isHumid)];
            text.WriteLine($"  {(isHumid ? "humid" : "dry")}: {Figures(OpeningFigures.Of(group))}");
            text.WriteLine($"    by estimate {Course(group, ofEstimate: true)}; by measurement {Course(group, ofEstimate: false)}");
            if (treatment.Id == CrabgrassDates.Treatment) Ahead(text, group);
        }

        OpeningPair[] compared = [.. pairs.Where(pair => pair.Station.IsHumid && pair.BothOpened && pair.IsWhole)];
        if (!compared.Any(pair => pair.Apart > 0)) return;
        text.WriteLine("  humid stations furthest apart: mean and most days, seasons compared");
        foreach (var station in compared.GroupBy(pair => pair.Station.Name).OrderByDescending(group => group.Average(pair => pair.Apart)).Take(WorstStations))
        {
            text.WriteLine(FormattableString.Invariant($"    {station.Key}: {station.Average(pair => pair.Apart):0.0}, {station.Max(pair => pair.Apart)}, {station.Count()}"));
        }

        text.WriteLine("  humid seasons furthest apart; 5-day mean soil at 5 cm, estimated / measured, around both openings [°F]");
        foreach (OpeningPair pair in compared.Where(pair => pair.Apart > 0).OrderByDescending(pair => pair.Apart).Take(WorstSeasons))
        {
            SoilCurves.Write(curves, pair);
            text.WriteLine(SoilCurves.InWords(pair));
        }
    }

    private static string Figures(OpeningFigures figures) => string.Create(
        CultureInfo.InvariantCulture,
        $"{figures.Apart.Length} of {figures.Seasons} seasons compared: mean {figures.Mean:0.00}, median {figures.Median:0.#} days apart, within 3 days {figures.Within(3):0.00}, 7 {figures.Within(7):0.00}, 14 {figures.Within(14):0.00}; with holes in the measurement too {figures.ApartWithHoles.Length}: {figures.MeanWithHoles:0.00}, {figures.MedianWithHoles:0.#}; opened by the estimate alone {figures.OnlyEstimated}, by the measurement alone {figures.OnlyMeasured}");

    private static string Course(OpeningPair[] pairs, bool ofEstimate)
    {
        var windows = pairs.Select(pair => (Window: ofEstimate ? pair.Estimated : pair.Measured, Metrics: ofEstimate ? pair.Station.Estimated : pair.Station.Measured)).ToList();
        LetGo[] letGo = [.. windows.Select(each => LetGo.Of(each.Window, each.Metrics))];
        return $"opened {windows.Count(each => each.Window.FirstOpening is not null)}, reopened {windows.Sum(each => each.Window.Reopenings)}, what opened it let go in {letGo.Count(each => each.Times > 0)} seasons ({letGo.Sum(each => each.Times)} times) and came back in {letGo.Count(each => each.CameBack > 0)} ({letGo.Sum(each => each.CameBack)} times)";
    }

    private static void Ahead(TextWriter text, OpeningPair[] pairs)
    {
        foreach (bool ofEstimate in (bool[])[true, false])
        {
            (DateOnly, CrabgrassDates)[] openings =
            [
                .. from pair in pairs
                   let window = ofEstimate ? pair.Estimated : pair.Measured
                   where window.FirstOpening is not null && !window.MayHaveOpenedEarlier
                   select (window.FirstOpening!.Day, CrabgrassDates.Of(pair.Station, window)),
            ];
            text.WriteLine($"    opened by {(ofEstimate ? "estimate" : "measurement")} {AheadOfCrabgrass.Of(openings).InWords()}");
        }
    }
}
