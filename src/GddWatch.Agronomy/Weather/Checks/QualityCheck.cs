namespace GddWatch.Agronomy.Weather.Checks;

/// <summary>The checks of daily air temperatures, in the order in which they run.</summary>
public enum QualityCheck
{
    /// <summary>Zeros that stand for a missing value.</summary>
    Naught,

    /// <summary>A month that is a copy of another, or with the same minimum and maximum on many days.</summary>
    Duplicate,

    /// <summary>Beyond what was ever measured on earth.</summary>
    Bounds,

    /// <summary>The same value for weeks.</summary>
    Streak,

    /// <summary>Far away from all other values of the calendar month.</summary>
    Gap,

    /// <summary>Far away from what is usual at that time of the year.</summary>
    ClimatologicalOutlier,

    /// <summary>A maximum below the minimum of its day.</summary>
    Internal,

    /// <summary>Far away from the day before and the day after.</summary>
    Spike,

    /// <summary>A maximum far above the minima around it, or a minimum far below the maxima.</summary>
    LaggedRange,

    /// <summary>Far away from what the neighbours let expect.</summary>
    SpatialRegression,

    /// <summary>A minimum above every maximum of its calendar month, or a maximum below every minimum.</summary>
    Megaconsistency,
}
