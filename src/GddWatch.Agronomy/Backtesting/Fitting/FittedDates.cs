namespace GddWatch.Agronomy.Backtesting.Fitting;

/// <summary>What one criterion chose, and how well it foretells.</summary>
public sealed record FittedDates
{
    /// <summary>The criterion.</summary>
    public required FitCriterion Criterion { get; init; }

    /// <summary>The second constant: a base temperature [°C] or over how many days is averaged [days].</summary>
    public required double GridValue { get; init; }

    /// <summary>The threshold, in the model's unit.</summary>
    public required double Threshold { get; init; }

    /// <summary>The interval of the second constant; null where there is none.</summary>
    public required ConfidenceInterval? GridInterval { get; init; }

    /// <summary>The interval of the threshold; it goes with the second constant, and means little without it. Null where there is none.</summary>
    public required ConfidenceInterval? ThresholdInterval { get; init; }

    /// <summary>Mean absolute error over the events that it was fitted to [days].</summary>
    public required double FittedErrorDays { get; init; }

    /// <summary>Mean absolute error of years that were left out of the fit, at every site at once [days].</summary>
    public required double YearLeftOutErrorDays { get; init; }

    /// <summary>Mean error of years that were left out, positive is late [days].</summary>
    public required double YearLeftOutBiasDays { get; init; }

    /// <summary>Mean absolute error of sites that were left out of the fit [days]; null with one site.</summary>
    public required double? SiteLeftOutErrorDays { get; init; }

    /// <summary>The errors of the years left out, event by event [days].</summary>
    public required IReadOnlyList<int> YearLeftOutErrors { get; init; }
}
