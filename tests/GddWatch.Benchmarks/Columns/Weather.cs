namespace GddWatch.Benchmarks.Columns;

/// <summary>Made-up weather for benchmarks.</summary>
public enum Weather
{
    /// <summary>Seasons: most days lie wholly below or above the base.</summary>
    Seasonal,

    /// <summary>The worst case: every day passes both thresholds.</summary>
    EveryDayCrossesBoth,
}
