namespace GddWatch.Agronomy.Quantities;

/// <summary>The units that people read in notices and tables. Inside, and in output for programs, everything is metric.</summary>
public enum ReadersUnits
{
    /// <summary>°C, cm, mm.</summary>
    Metric,

    /// <summary>°F, inches.</summary>
    UnitedStates,
}
