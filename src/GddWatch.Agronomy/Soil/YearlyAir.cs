namespace GddWatch.Agronomy.Soil;

/// <summary>
/// The yearly mean of the air as far as it can be known on a day: the mean over the days so far, from a year on with a memory of a year,
/// of the air's departure from the latitude's yearly wave. The published models take the site's own yearly mean, which nobody has on the
/// day.
/// </summary>
internal struct YearlyAir
{
    private int days;

    /// <summary>The yearly mean [°C].</summary>
    public double MeanC { readonly get; private set; }

    public void Add(double airC, double waveC)
    {
        days++;
        MeanC += Math.Max(1.0 / 365, 1.0 / days) * (airC - waveC - MeanC);
    }
}
