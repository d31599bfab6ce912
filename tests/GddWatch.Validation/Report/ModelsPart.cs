using GddWatch.Validation.Fitting;
using GddWatch.Validation.Scoring;

namespace GddWatch.Validation.Report;

/// <summary>How far each model is from the measurement, by group of stations and part of the year, and by month.</summary>
internal static class ModelsPart
{
    public static void Write(ReportPage page, FigureList figures, Evidence evidence)
    {
        page.Heading("All models beside each other");
        page.Text(
            "How far the daily mean soil temperature at 5 cm is from the measured one. Each cell is the typical error in °C (root mean square error over "
            + "all station-days), with the bias in brackets: below zero means the estimate is too cold. The three parts are the whole year, February to May, when windows "
            + "open on rising soil, and August to October, when they open on falling soil. Humid stations have at least 600 mm of precipitation a year; lawns grow there without constant watering.");
        page.Text(
            "The rivals are published models with the constants that their authors give, or, where the descriptions say so, with a few constants fitted on these same stations: for those, the figures here are a little "
            + "flattering, since no station is left out. The default and its variant without precipitation are always held out.");
        page.Table("Error at 5 cm, all station-days together [°C]", Columns(StationGroup.Humid, StationGroup.All), Rows(figures, evidence, pooled: true));
        page.Text(
            "The same, but each station's own error first and then the mean over the stations, so that a station with a bad sensor or a longer record does not weigh more. "
            + "The orientation figures published with such data are usually of this kind.");
        page.Table("Error at 5 cm, mean over the stations [°C]", Columns(StationGroup.Humid, StationGroup.All), Rows(figures, evidence, pooled: false));
        page.Text(
            "So that no rival gains or loses by where its constants come from, the next table gives each an offset and a factor fitted by least squares on the other humid stations, and scores the station "
            + "left out with them. The default stands beside them as it is.");
        page.Table("Error at 5 cm with offset and factor held out, all station-days together [°C]", Columns(StationGroup.Humid, StationGroup.All), Rows(figures, HeldOut(evidence), pooled: true));
        WriteMonths(page, figures, evidence);
    }

    private static Evidence HeldOut(Evidence evidence) => evidence with
    {
        Models =
        [
            .. evidence.Models.Select(model => model.Chosen
                ? model
                : model with { Name = $"{model.Name}, offset and factor held out", Estimate = StraightLineHeldOut.Of(model.Estimate, evidence.Stations) }),
        ],
    };

    private static string[] Columns(params StationGroup[] groups) =>
    [
        "Model",
        .. from kind in groups from part in PartOfYear.Judged select $"{kind.Name}\n{part.Name}",
    ];

    private static IEnumerable<IReadOnlyList<string>> Rows(FigureList figures, Evidence evidence, bool pooled)
    {
        foreach (ModelRun model in evidence.Models)
        {
            List<string> row = [(model.Chosen ? "*" : "") + model.Name];
            foreach (StationGroup group in (StationGroup[])[StationGroup.Humid, StationGroup.All])
            {
                foreach (PartOfYear part in PartOfYear.Judged)
                {
                    Score score = Score.Of(model.Estimate, evidence.Stations, group, part);
                    (double error, double bias) = pooled ? (score.PooledRmseC, score.PooledBiasC) : (score.StationRmseC, score.StationBiasC);
                    row.Add($"{Shown.Plain(error)} ({Shown.Signed(bias)})");
                    string kind = pooled ? "pooled" : "station mean";
                    figures.Add("models at 5 cm", model.Name, group.Name, part.Name, $"RMSE {kind}", error, "degC", score.Days);
                    figures.Add("models at 5 cm", model.Name, group.Name, part.Name, $"bias {kind}", bias, "degC", score.Days);
                }
            }

            yield return row;
        }
    }

    private static void WriteMonths(ReportPage page, FigureList figures, Evidence evidence)
    {
        page.Heading("Error by month");
        List<(string Name, double[] Values)> errors = [], biases = [], held = [];
        foreach ((string name, SoilEstimate estimate) in Compared(evidence))
        {
            Score[] scores = [.. PartOfYear.EachMonth.Select(month => Score.Of(estimate, evidence.Stations, StationGroup.Humid, month))];
            errors.Add((name, [.. scores.Select(score => score.PooledRmseC)]));
            biases.Add((name, [.. scores.Select(score => score.PooledBiasC)]));
            held.Add((name, [.. scores.Select(score => score.Coverage)]));
            for (int month = 0; month < 12; month++)
            {
                string part = PartOfYear.EachMonth[month].Name;
                figures.Add("months at 5 cm", name, "humid", part, "RMSE pooled", scores[month].PooledRmseC, "degC", scores[month].Days);
                figures.Add("months at 5 cm", name, "humid", part, "bias pooled", scores[month].PooledBiasC, "degC", scores[month].Days);
                figures.Add("months at 5 cm", name, "humid", part, "share held", scores[month].Coverage, "1", scores[month].Days);
            }
        }

        int worst = Array.IndexOf(errors[0].Values, errors[0].Values.Max()), best = Array.IndexOf(errors[0].Values, errors[0].Values.Min());
        page.Text(
            $"The default model's typical error is largest in {PartOfYear.EachMonth[worst].Name} ({Shown.Plain(errors[0].Values[worst])} °C) and smallest in {PartOfYear.EachMonth[best].Name} "
            + $"({Shown.Plain(errors[0].Values[best])} °C): in early summer the sun's strength and the wetness of the ground matter most, and both are only judged from the daily temperature range and the rain. "
            + "The best of the rivals stands beside it. The mean of the air is too cold all year, most of all in winter, when grass, snow and freezing water keep the soil warm.");
        page.Picture(Charts.ByMonth("Typical error by month, humid stations", "Root mean square error [°C]", errors), "Typical error at 5 cm by month, humid stations.");
        page.Picture(Charts.ByMonth("Bias by month, humid stations", "Estimate − measured [°C]", biases, 0), "Bias at 5 cm by month, humid stations; the dashed line is no bias.");
        page.Table(
            "Default model at 5 cm, humid stations, held out, by month [°C]",
            ["", .. PartOfYear.EachMonth.Select(month => month.Name)],
            [
                ["Typical error", .. errors[0].Values.Select(value => Shown.Plain(value))],
                ["Bias", .. biases[0].Values.Select(value => Shown.Signed(value))],
                ["Days in the 80 % range", .. held[0].Values.Select(Shown.Share)],
            ]);
    }

    private static IEnumerable<(string Name, SoilEstimate Estimate)> Compared(Evidence evidence)
    {
        yield return ("default", evidence.Default);
        yield return ("default, temperatures only", evidence.AirTemperaturesOnly);
        ModelRun rival = evidence.Models.Skip(2).MinBy(model => Score.Of(model.Estimate, evidence.Stations, StationGroup.Humid, PartOfYear.Year).PooledRmseC)
            ?? throw new InvalidOperationException("There is no rival.");
        yield return (rival.Name, rival.Estimate);
        yield return ("5-day air mean", evidence.AirOfFiveDays);
    }
}
