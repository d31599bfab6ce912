namespace GddWatch.Agronomy.Windows;

/// <summary>Where a window stands.</summary>
public enum WindowState
{
    /// <summary>Not yet open.</summary>
    Waiting,

    /// <summary>Likely to open soon.</summary>
    Nearing,

    /// <summary>Open.</summary>
    Open,

    /// <summary>Open, but past its best.</summary>
    Closing,

    /// <summary>Over for this season.</summary>
    Closed,

    /// <summary>Something done forbids it.</summary>
    Held,

    /// <summary>Carried out.</summary>
    Done,

    /// <summary>Too little is known to say.</summary>
    Unknown,
}
