namespace GddWatch.Feeds.Archives.Ghcn;

/// <summary>When an observer read a value, as far as it matters.</summary>
internal enum TimeOfReading
{
    /// <summary>The file does not tell it.</summary>
    NotTold,

    /// <summary>From one to twelve in the morning: a maximum is of the day before.</summary>
    Morning,

    /// <summary>At another time.</summary>
    Later,
}
