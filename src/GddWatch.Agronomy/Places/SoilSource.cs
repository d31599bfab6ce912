namespace GddWatch.Agronomy.Places;

/// <summary>Where a site's soil temperature comes from.</summary>
public enum SoilSource
{
    /// <summary>Estimated from the air; the default, and all that most sites have.</summary>
    Estimated,

    /// <summary>Measured at the site by a sensor that its feed carries.</summary>
    Measured,
}
