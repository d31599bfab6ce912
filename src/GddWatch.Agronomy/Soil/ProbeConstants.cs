namespace GddWatch.Agronomy.Soil;

/// <summary>
/// The constants of <see cref="ProbeCorrection"/>, from validation.
/// <para>From the errors of <see cref="LayeredTurfSoil"/> at 5 cm at stations left out of its fit (US Climate Reference Network 2010 to
/// 2023), with three daily means on the 18th, 11th and 4th day before a day: the 30 days after that day at humid stations RMSE 1.04 °C where it is
/// 1.44 uncorrected. The tool soil-report measures it again.</para>
/// </summary>
public sealed record ProbeConstants
{
    /// <summary>Standard deviation of a site's own bias before any reading [°C].</summary>
    public double BiasDeviationC { get; init; } = 1.2;

    /// <summary>How long a site's bias lasts: its correlation falls to 1/e in so many days [days].</summary>
    public double MemoryDays { get; init; } = 120;

    /// <summary>Variance of the estimate's error from day to day, which a reading does not tell from bias [°C²].</summary>
    public double DayToDayVariance { get; init; } = 0.5;

    /// <summary>Variance of a hand-held thermometer and of where it is put [°C²]; assumed.</summary>
    public double ThermometerVariance { get; init; } = 0.25;

    /// <summary>
    /// Variance of the conversion of a reading at a time of day to the mean of its day [°C²]: (0.49 °C)², what is left of the daily wave at
    /// 10 cm at Harvard Forest (see <see cref="DiurnalWave"/>). One place, one depth: a rough figure.
    /// </summary>
    public double ConversionVariance { get; init; } = 0.49 * 0.49;

    /// <summary>From how many standard deviations on a reading is doubted.</summary>
    public double DoubtFromDeviations { get; init; } = 3;

    /// <summary>Over what difference in depth the correlation of biases falls to 1/e [cm]; set by eye between 0.955 at 5 cm apart and
    /// 0.919 at 15 cm.</summary>
    public double DepthMemoryCm { get; init; } = 150;

    /// <summary>Share of the estimate's variance that is bias, and so shrinks with what is known of the bias; the rest stays.</summary>
    public double BiasShareOfVariance { get; init; } = 0.7;
}
