namespace GddWatch.Agronomy.Places;

/// <summary>The half of the earth, which decides when the lawn year begins.</summary>
public enum Hemisphere
{
    /// <summary>North of the equator, the equator included.</summary>
    Northern,

    /// <summary>South of the equator: the lawn year is shifted by half a year.</summary>
    Southern,
}
