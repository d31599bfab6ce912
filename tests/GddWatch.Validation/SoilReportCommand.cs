using System.Diagnostics;
using System.Text;
using GddWatch.Agronomy.Soil;
using GddWatch.Validation.Fitting;
using GddWatch.Validation.Report;
using GddWatch.Validation.Scoring;
using GddWatch.Validation.Weather;

namespace GddWatch.Validation;

/// <summary>Writes the validation report: one page for people and one table for programs.</summary>
internal static class SoilReportCommand
{
    public static void Run(string weatherFolder, string outFolder, int threads)
    {
        Stopwatch watch = Stopwatch.StartNew();
        Evidence evidence = Gather(weatherFolder, threads);
        Console.Error.WriteLine($"all models estimated: {watch.Elapsed.TotalSeconds:0} s");

        Charts.ChooseFont();
        ReportPage page = new("Soil temperature: how true the estimate is");
        FigureList figures = new();
        SummaryPart.Write(page, figures, evidence);
        ModelsPart.Write(page, figures, evidence);
        RangesPart.Write(page, figures, evidence);
        StationsPart.Write(page, figures, evidence);
        SunAndHumidityPart.Write(page, figures, evidence);
        ElsewherePart.Write(page, figures, evidence, LayeredTurfSoil.Default);
        DatesPart.Write(page, figures, evidence);
        ProbesPart.Write(page, figures, evidence);

        Directory.CreateDirectory(outFolder);
        UTF8Encoding utf8 = new(encoderShouldEmitUTF8Identifier: false);
        File.WriteAllText(Path.Combine(outFolder, "soil.html"), page.Html(), utf8);
        File.WriteAllText(Path.Combine(outFolder, "soil.csv"), figures.Csv(), utf8);
        Console.Error.WriteLine($"written to {outFolder}: {watch.Elapsed.TotalSeconds:0} s");
    }

    private static Evidence Gather(string weatherFolder, int threads)
    {
        IReadOnlyList<MeasuredStation> stations = UscrnStations.Read(Path.Combine(weatherFolder, "uscrn-daily"));
        LeaveOneStationOut heldOut = LeaveOneStationOut.Run(TurfSoilFit.ValuesInCode, stations, threads);
        List<ModelRun> models =
        [
            new($"{LayeredTurfSoil.Default.Name} (default, held out)", true, heldOut.WithRain[5]),
            new($"{LayeredTurfSoil.Default.Name}, air temperatures only (held out)", false, heldOut.AirOnly[5]),
        ];
        foreach (ISoilTemperatureModel rival in Rivals.All)
        {
            models.Add(new ModelRun(rival.Name, false, SoilEstimate.Of(rival, stations, 5)));
        }

        MeasuredStation?[] elsewhere = [HarvardForest.Read(weatherFolder), DublinAirport.Read(weatherFolder), HastingsTract.Read(weatherFolder)];
        return new Evidence(stations, heldOut, models, [.. elsewhere.OfType<MeasuredStation>()]);
    }
}
