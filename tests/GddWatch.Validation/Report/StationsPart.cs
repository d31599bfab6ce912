using GddWatch.Validation.Scoring;
using GddWatch.Validation.Weather;

namespace GddWatch.Validation.Report;

/// <summary>Estimated beside measured in one year at a few stations, and each station's own bias.</summary>
internal static class StationsPart
{
    private const int PreferredYear = 2019;

    /// <summary>From snow to no winter, and one dry place.</summary>
    private static readonly string[] Pictured = ["WI_Necedah_5_WNW", "IN_Bedford_5_WNW", "GA_Watkinsville_5_SSE", "NM_Socorro_20_N"];

    public static void Write(ReportPage page, FigureList figures, Evidence evidence)
    {
        page.Heading("A year at a few stations");
        page.Text(
            $"Estimated and measured soil temperature at 5 cm in {PreferredYear}: a station with a snowy winter, one in the middle, one in the south and a dry one. "
            + "The constants behind each picture were fitted without that station. The shaded band is the stated 80 % range.");
        foreach (string name in Pictured)
        {
            int index = IndexOf(evidence.Stations, name);
            if (index >= 0) Picture(page, evidence, index);
        }

        page.Heading("Each station's own bias");
        page.Text(
            "Much of the error is not from day to day: one station is warmer all year round than its air temperatures suggest, another colder (shade, slope, soil, or a drifting sensor). "
            + "No model that sees only the weather can know that. A few readings of a soil thermometer can.");
        Biases(page, figures, evidence);
    }

    private static void Picture(ReportPage page, Evidence evidence, int index)
    {
        MeasuredStation station = evidence.Stations[index];
        DateOnly first = new(PreferredYear, 1, 1);
        int from = station.Series.IndexOf(first);
        int days = first.AddYears(1).DayNumber - first.DayNumber;
        if (from < 0 || from + days > station.Series.Count) return;
        double[] Cut(double[] column) => column[from..(from + days)];
        double[] halfRange = [.. Cut(evidence.Default.DeviationC[index]).Select(deviation => SoilEstimate.EightyPercent * deviation)];
        string title = $"{Readable(station.Name)}, {PreferredYear} ({(station.IsHumid ? "humid" : "dry")})";
        byte[] png = Charts.Year(
            title, first, Cut(station.MeasuredC[5]), Cut(evidence.Default.MeanC[index]), halfRange, Cut(evidence.AirOfFiveDays.MeanC[index]));
        page.Picture(png, $"{title}: soil at 5 cm, estimated without this station and measured.");
    }

    private static void Biases(ReportPage page, FigureList figures, Evidence evidence)
    {
        List<(string Name, double Value, int Group)> bars = [];
        foreach (MeasuredStation station in evidence.Stations)
        {
            StationGroup alone = new(station.Name, other => other == station);
            Score year = Score.Of(evidence.Default, evidence.Stations, alone, PartOfYear.Year);
            bars.Add((Readable(station.Name), year.PooledBiasC, station.IsHumid ? 0 : 1));
            foreach (PartOfYear part in PartOfYear.Judged)
            {
                Score score = Score.Of(evidence.Default, evidence.Stations, alone, part);
                figures.Add("stations at 5 cm", "default, held out", station.Name, part.Name, "RMSE", score.PooledRmseC, "degC", score.Days);
                figures.Add("stations at 5 cm", "default, held out", station.Name, part.Name, "bias", score.PooledBiasC, "degC", score.Days);
            }
        }

        double spread = Spread([.. bars.Where(bar => bar.Group == 0).Select(bar => bar.Value)]);
        double spreadAll = Spread([.. bars.Select(bar => bar.Value)]);
        figures.Add("stations at 5 cm", "default, held out", "humid", "year", "standard deviation of the bias", spread, "degC", bars.Count(bar => bar.Group == 0));
        figures.Add("stations at 5 cm", "default, held out", "all", "year", "standard deviation of the bias", spreadAll, "degC", bars.Count);
        page.Text($"The standard deviation of the bias over the stations is {Shown.Plain(spread)} °C for humid ones and {Shown.Plain(spreadAll)} °C for all.");
        page.Picture(
            Charts.Bars("Bias over the year by station (green: humid, orange: dry)", "Estimate − measured [°C]", [.. bars.OrderBy(bar => bar.Value)]),
            "Bias at 5 cm over the whole record, each station held out.");
    }

    private static double Spread(double[] values)
    {
        double mean = values.Average();
        return Math.Sqrt(values.Average(value => (value - mean) * (value - mean)));
    }

    private static int IndexOf(IReadOnlyList<MeasuredStation> stations, string name) =>
        Enumerable.Range(0, stations.Count).FirstOrDefault(i => stations[i].Name == name, -1);

    /// <summary>"IN_Bedford_5_WNW" becomes "Bedford IN (5 WNW)".</summary>
    private static string Readable(string name)
    {
        string[] words = name.Split('_');
        return words.Length < 4 ? name : $"{string.Join(' ', words[1..^2])} {words[0]} ({words[^2]} {words[^1]})";
    }
}
