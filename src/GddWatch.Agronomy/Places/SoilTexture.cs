namespace GddWatch.Agronomy.Places;

/// <summary>The texture classes of the soil triangle that matter for warmth and water.</summary>
public enum SoilTexture
{
    /// <summary>Sand.</summary>
    Sand,

    /// <summary>Loamy sand.</summary>
    LoamySand,

    /// <summary>Sandy loam.</summary>
    SandyLoam,

    /// <summary>Loam.</summary>
    Loam,

    /// <summary>Silt loam.</summary>
    SiltLoam,

    /// <summary>Clay loam.</summary>
    ClayLoam,

    /// <summary>Clay.</summary>
    Clay,
}
