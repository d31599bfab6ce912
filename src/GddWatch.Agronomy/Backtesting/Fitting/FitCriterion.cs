namespace GddWatch.Agronomy.Backtesting.Fitting;

/// <summary>By what the constants are chosen.</summary>
public enum FitCriterion
{
    /// <summary>Least root mean square of the days between foretold and observed date; the threshold is searched with the other constant.</summary>
    LeastErrorInDays,

    /// <summary>Least coefficient of variation of the heat at the events; the threshold is its mean. Yang, Logan and Coffey 1995.</summary>
    LeastCoefficientOfVariation,

    /// <summary>Least standard deviation of the heat at the events; the threshold is its mean. Yang, Logan and Coffey 1995.</summary>
    LeastDeviationInHeat,

    /// <summary>Least standard deviation of the heat at the events in days, by the mean heat of a day; the threshold is its mean. Yang, Logan and Coffey 1995.</summary>
    LeastDeviationInDays,

    /// <summary>No slope of the heat at the events on the mean temperature until then; the threshold is its mean. Yang, Logan and Coffey 1995.</summary>
    NoSlope,
}
