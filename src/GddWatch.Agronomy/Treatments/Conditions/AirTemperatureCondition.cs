using GddWatch.Agronomy.Changes;
using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Windows;

namespace GddWatch.Agronomy.Treatments.Conditions;

/// <summary>Met while an air temperature, averaged over the last days, lies in a band and has on enough of the last days; or while it does on each of the next days by the forecast.</summary>
/// <param name="Of">Which of a day's temperatures.</param>
/// <param name="MeanOverDays">Over how many days is averaged, today included [days].</param>
/// <param name="Above">The lower end of the band, in it; null is none.</param>
/// <param name="Below">The upper end of the band, in it; null is none.</param>
/// <param name="Holding">How long it must be so.</param>
/// <param name="LetsGoBy">Once met it stays met until the temperature is further than this outside the band; null where it must go on being in it.</param>
/// <param name="NextDays">On how many days to come it must be so by the forecast [days]; null looks at the past days.</param>
public sealed record AirTemperatureCondition(
    AirValue Of, int MeanOverDays, Temperature? Above, Temperature? Below, Holding Holding, TemperatureDifference? LetsGoBy = null, int? NextDays = null) : Condition
{
    private Band Limits => new(Above?.Celsius ?? double.NegativeInfinity, Below?.Celsius ?? double.PositiveInfinity);

    /// <inheritdoc/>
    public override bool IsLevel => true;

    /// <inheritdoc/>
    internal override void Judge(SeasonView view, DateOnly first, Span<Verdict> verdicts)
    {
        if (NextDays is { } next)
        {
            for (int i = 0; i < verdicts.Length; i++) verdicts[i] = InForecast(view, first.AddDays(i), next);
            return;
        }

        Band? stays = LetsGoBy is { } wider ? new Band(Limits.Low - wider.Celsius, Limits.High + wider.Celsius) : null;
        HeldBand.Judge(view.Metrics.AirMeans(Of, MeanOverDays), view.Metrics.Series.IndexOf(first), view.FirstIndex, Limits, Holding, stays, verdicts);
    }

    /// <inheritdoc/>
    public override Because Why(SeasonView view, DateOnly day)
    {
        ArgumentNullException.ThrowIfNull(view);
        if (NextDays is { } next)
        {
            double[] ahead = [.. Enumerable.Range(1, next).Select(days => view.Metrics.ForecastAirAt(Of, day.AddDays(days)))];
            return new AirForecastBecause(this, day, ahead);
        }

        double[] means = view.Metrics.AirMeans(Of, MeanOverDays);
        int today = view.Metrics.Series.IndexOf(day);
        double mean = (uint)today < (uint)means.Length ? means[today] : double.NaN;
        return new AirTemperatureBecause(this, day, mean, HeldBand.Count(means, today, Limits, Holding.OfDays).In, On(view, day) == Verdict.Yes);
    }

    /// <inheritdoc/>
    public override string Explain(ReadersUnits units) => NextDays is { } next
        ? $"the {Name} is forecast {LimitWords(units)} {(next == 1 ? "for the next day" : $"on each of the next {next} days")}"
        : $"the {Name} is {LimitWords(units)} {Holding.InWords()}{(LetsGoBy is { } wider ? $" (and so until it is more than {Wording.TemperatureDifference(wider.Celsius, units)} outside)" : "")}";

    /// <inheritdoc/>
    internal override DrawnMeasure? Measure(SeasonView view, ReadersUnits units) => NextDays is not null
        ? null
        : DrawnMeasure.OfTemperature(
            Name,
            $"Air, {(Of == AirValue.Minimum ? "daily low" : Of == AirValue.Maximum ? "daily high" : "daily mean")}{(MeanOverDays == 1 ? "" : $", {MeanOverDays}-day mean")}",
            view.Metrics.AirMeans(Of, MeanOverDays),
            [.. new[] { Above, Below }.OfType<Temperature>().Select(end => end.Celsius)],
            LimitWords(units),
            units);

    /// <summary>What is looked at, in words.</summary>
    internal string Name
    {
        get
        {
            string of = Of switch
            {
                AirValue.Minimum => "daily low of the air",
                AirValue.Maximum => "daily high of the air",
                _ => "daily mean of the air",
            };
            return MeanOverDays == 1 ? of : $"{MeanOverDays}-day mean of the {of}";
        }
    }

    /// <summary>The band in words.</summary>
    internal string LimitWords(ReadersUnits units) => (Above, Below) switch
    {
        ({ } above, { } below) => $"from {Wording.Temperature(above, units)} to {Wording.Temperature(below, units)}",
        ({ } above, null) => $"at or above {Wording.Temperature(above, units)}",
        (null, { } below) => $"at or below {Wording.Temperature(below, units)}",
        _ => "of any height",
    };

    private Verdict InForecast(SeasonView view, DateOnly day, int next)
    {
        Verdict verdict = Verdict.Yes;
        for (int days = 1; days <= next; days++)
        {
            double value = view.Metrics.ForecastAirAt(Of, day.AddDays(days));
            if (double.IsNaN(value)) verdict = Verdict.Unknown;
            else if (!Limits.Holds(value)) return Verdict.No;
        }

        return verdict;
    }
}

/// <summary>The state of an air temperature on a day.</summary>
/// <param name="Condition">What it was held against.</param>
/// <param name="Day">The day.</param>
/// <param name="MeanC">The value [°C], NaN where it is not known.</param>
/// <param name="DaysIn">On how many of the last days it lay in the band [days].</param>
/// <param name="Met">Whether the condition is met.</param>
public sealed record AirTemperatureBecause(AirTemperatureCondition Condition, DateOnly Day, double MeanC, int DaysIn, bool Met) : Because
{
    /// <inheritdoc/>
    public override string Sentence(ReadersUnits units)
    {
        if (double.IsNaN(MeanC)) return $"The {Condition.Name} is not known on {Wording.Day(Day)}: too many days of weather are missing.";
        string held = Condition.Holding.FoundInWords(DaysIn);
        string limit = Condition.LimitWords(units);
        string found = $"The {Condition.Name} was {Wording.Temperature(MeanC, units)} on {Wording.Day(Day)}";
        if (held.Length > 0) return $"{found}, and {limit} {held}.";
        return Met ? $"{found}, and so {limit}." : $"{found}; {limit} is needed.";
    }

    /// <inheritdoc/>
    public override IReadOnlyList<Figure> Figures(ReadersUnits units) => double.IsNaN(MeanC)
        ? []
        : [new Figure(Wording.Capital(Condition.Name), Wording.Temperature(MeanC, units), $"{Condition.LimitWords(units)} {Condition.Holding.InWords()}")];
}

/// <summary>What the forecast says of an air temperature.</summary>
/// <param name="Condition">What it was held against.</param>
/// <param name="Day">The day from which the forecast looks ahead.</param>
/// <param name="AheadC">The value of each day ahead [°C], NaN where there is none.</param>
public sealed record AirForecastBecause(AirTemperatureCondition Condition, DateOnly Day, IReadOnlyList<double> AheadC) : Because
{
    /// <inheritdoc/>
    public override string Sentence(ReadersUnits units)
    {
        string next = AheadC.Count == 1 ? "the next day" : $"the next {AheadC.Count} days";
        if (AheadC.Any(double.IsNaN)) return $"The {Condition.Name} of {next} is not known on {Wording.Day(Day)}: there is no forecast for it.";
        return $"By the forecast of {Wording.Day(Day)} the {Condition.Name} is {Wording.List([.. AheadC.Select(value => Wording.Temperature(value, units))])} on {next}; {Condition.LimitWords(units)} is looked for.";
    }

    /// <inheritdoc/>
    public override IReadOnlyList<Figure> Figures(ReadersUnits units) => AheadC.Any(double.IsNaN)
        ? []
        : [new Figure($"{Wording.Capital(Condition.Name)}, forecast", Wording.List([.. AheadC.Select(value => Wording.Temperature(value, units))]), Condition.LimitWords(units))];
}
