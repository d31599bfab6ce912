namespace GddWatch.Agronomy.Soil;

/// <summary>What became of a probe reading.</summary>
public enum ReadingVerdict
{
    /// <summary>It corrects the estimate.</summary>
    Used,

    /// <summary>It lies so far from what was expected that it corrects the estimate only a little; reading again would tell.</summary>
    Doubted,

    /// <summary>There is no estimate for its day, so that there is nothing to correct.</summary>
    NoEstimateThatDay,

    /// <summary>The air temperatures of its day are not known: it lies before the record or in a hole of it, or its day's weather has yet
    /// to come.</summary>
    NoWeatherThatDay,
}
