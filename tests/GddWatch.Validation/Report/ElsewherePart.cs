using GddWatch.Agronomy.Soil;
using GddWatch.Validation.Scoring;
using GddWatch.Validation.Weather;

namespace GddWatch.Validation.Report;

/// <summary>Places of other networks, on which no constant of the models was fitted.</summary>
internal static class ElsewherePart
{
    public static void Write(ReportPage page, FigureList figures, Evidence evidence, ISoilTemperatureModel model)
    {
        if (evidence.Elsewhere.Count == 0) return;
        page.Heading("Where no station was: forest, seaside, watered grass");
        page.Text(
            "Places from other networks, on which no constant of the estimate was fitted. (The rule that turns a probe reading at a time of day into a daily mean, which has no part in this table, was set by hand "
            + "from the daily range at Harvard Forest.) Harvard Forest has a cold, snowy winter. At Dublin Airport the sea keeps the air late while the soil "
            + "follows the sun, so that any model that only smooths and delays the air is out of step there. Hastings Tract is watered grass in a rainless summer, of which the model cannot know: "
            + "the only water it hears of is rain.");
        page.Table(
            "Error [°C], bias in brackets, and share of days in the 80 % range",
            ["Place and input", "year", "Feb-May", "Aug-Oct", "range holds\nyear", "days"],
            evidence.Elsewhere.SelectMany(station => Rows(figures, station, model)));
        List<(string, double[])> months = [.. evidence.Elsewhere.Select(station => (station.Name, Biases(figures, station, model)))];
        page.Picture(
            Charts.ByMonth("Bias by month where no station was", "Estimate − measured [°C]", months, 0),
            "Bias of the default model by month, with precipitation.");
        foreach (MeasuredStation station in evidence.Elsewhere) page.Text(Verdict(station, model));
    }

    private static IEnumerable<IReadOnlyList<string>> Rows(FigureList figures, MeasuredStation station, ISoilTemperatureModel model)
    {
        IReadOnlyList<MeasuredStation> alone = [station];
        (string Name, SoilEstimate Estimate)[] ways =
        [
            ("with precipitation", SoilEstimate.Of(model, alone, DepthOf(station))),
            ("air temperatures only", SoilEstimate.Of(model, alone, DepthOf(station), withRain: false)),
            ("5-day air mean", SoilEstimate.Of(new RunningMeanOfAir(5), alone, DepthOf(station))),
        ];
        foreach ((string name, SoilEstimate estimate) in ways)
        {
            Score[] scores = [.. PartOfYear.Judged.Select(part => Score.Of(estimate, alone, StationGroup.All, part))];
            for (int n = 0; n < scores.Length; n++)
            {
                figures.Add("elsewhere", name, station.Name, PartOfYear.Judged[n].Name, "RMSE", scores[n].PooledRmseC, "degC", scores[n].Days);
                figures.Add("elsewhere", name, station.Name, PartOfYear.Judged[n].Name, "bias", scores[n].PooledBiasC, "degC", scores[n].Days);
                figures.Add("elsewhere", name, station.Name, PartOfYear.Judged[n].Name, "share held", scores[n].Coverage, "1", scores[n].Days);
            }

            yield return
            [
                $"{station.Name}, {DepthOf(station)} cm: {name}",
                .. scores.Select(score => $"{Shown.Plain(score.PooledRmseC)} ({Shown.Signed(score.PooledBiasC)})"),
                Shown.Share(scores[0].Coverage),
                scores[0].Days.ToString(),
            ];
        }
    }

    private static double[] Biases(FigureList figures, MeasuredStation station, ISoilTemperatureModel model)
    {
        IReadOnlyList<MeasuredStation> alone = [station];
        double[] biases = MonthlyBiases(SoilEstimate.Of(model, alone, DepthOf(station)), alone);
        for (int month = 0; month < 12; month++)
        {
            figures.Add("elsewhere", "with precipitation", station.Name, PartOfYear.EachMonth[month].Name, "bias", biases[month], "degC", 0);
        }

        return biases;
    }

    private static string Verdict(MeasuredStation station, ISoilTemperatureModel model)
    {
        IReadOnlyList<MeasuredStation> alone = [station];
        SoilEstimate estimate = SoilEstimate.Of(model, alone, DepthOf(station));
        Score own = Score.Of(estimate, alone, StationGroup.All, PartOfYear.Year);
        double[] biases = MonthlyBiases(estimate, alone);
        int coldest = Array.IndexOf(biases, biases.Min()), warmest = Array.IndexOf(biases, biases.Max());
        Score air = Score.Of(SoilEstimate.Of(new RunningMeanOfAir(5), alone, DepthOf(station)), alone, StationGroup.All, PartOfYear.Year);
        string range = own.Coverage is >= 0.75 and <= 0.85
            ? "the stated range holds as it should"
            : own.Coverage < 0.75 ? "the stated range is too narrow there" : "the stated range is wider than needed there";
        string better = own.PooledRmseC < air.PooledRmseC ? "where the 5-day air mean has" : "and so worse than the 5-day air mean with";
        return $"{station.Name}: the typical error is {Shown.Plain(own.PooledRmseC)} °C {better} {Shown.Plain(air.PooledRmseC)}; "
            + $"the estimate is {Shown.Plain(Math.Abs(own.PooledBiasC))} °C too {(own.PooledBiasC < 0 ? "cold" : "warm")} over the year, from {Shown.Signed(biases[coldest], 1)} in {PartOfYear.EachMonth[coldest].Name} "
            + $"to {Shown.Signed(biases[warmest], 1)} in {PartOfYear.EachMonth[warmest].Name}, and {range} ({Shown.Share(own.Coverage)} of days).";
    }

    private static double[] MonthlyBiases(SoilEstimate estimate, IReadOnlyList<MeasuredStation> alone) =>
        [.. PartOfYear.EachMonth.Select(month => Score.Of(estimate, alone, StationGroup.All, month).PooledBiasC)];

    private static int DepthOf(MeasuredStation station) => station.MeasuredC.Keys.Single();
}
