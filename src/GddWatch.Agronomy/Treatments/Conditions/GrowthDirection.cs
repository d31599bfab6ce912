namespace GddWatch.Agronomy.Treatments.Conditions;

/// <summary>Which way growth is going.</summary>
public enum GrowthDirection
{
    /// <summary>Clearly above what it was a week before.</summary>
    Rising,

    /// <summary>Not falling.</summary>
    RisingOrFlat,

    /// <summary>Clearly below what it was a week before.</summary>
    Falling,
}
