namespace GddWatch.Agronomy.Weather;

/// <summary>How far a value can be trusted, from most to least.</summary>
public enum Mark : byte
{
    /// <summary>As read at the source.</summary>
    Measured,

    /// <summary>The source has replaced an earlier value by this one.</summary>
    Corrected,

    /// <summary>Put in where the source has a hole.</summary>
    Filled,

    /// <summary>Forecast for a day that had not been observed.</summary>
    Forecast,

    /// <summary>Doubted by a check.</summary>
    Suspect,
}
