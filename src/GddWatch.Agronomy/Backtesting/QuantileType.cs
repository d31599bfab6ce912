namespace GddWatch.Agronomy.Backtesting;

/// <summary>How a quantile is read between the ordered values. Source: Hyndman and Fan 1996, Sample quantiles in statistical packages, Am. Stat. 50:361-365 (SEEN).</summary>
public enum QuantileType
{
    /// <summary>Their type 7, h = (n − 1)p + 1: what most software takes where nothing is said.</summary>
    Seven = 7,

    /// <summary>Their type 8, h = (n + 1/3)p + 1/3: nearly unbiased in the median whatever the values are, and what the authors recommend. Used here where nothing else is said.</summary>
    Eight = 8,
}
