namespace GddWatch.Agronomy.Backtesting.Rivals;

/// <summary>A way to find the day.</summary>
public enum Rival
{
    /// <summary>The judged window itself.</summary>
    Window,

    /// <summary>The fixed calendar date that people go by.</summary>
    Calendar,

    /// <summary>The best fixed date that the other years would have given.</summary>
    BestFixedDate,

    /// <summary>The first passage of a running mean of air temperature.</summary>
    RunningMean,
}
