namespace GddWatch.Agronomy.Changes;

/// <summary>What a notice is about.</summary>
public enum NoticeKind
{
    /// <summary>A window is likely to open soon.</summary>
    HeadsUp,

    /// <summary>A window has opened, or was found open.</summary>
    Opened,

    /// <summary>A window is past its best.</summary>
    Closing,

    /// <summary>A window has closed.</summary>
    Closed,

    /// <summary>Something done forbids the treatment for now.</summary>
    Held,

    /// <summary>Something told turned out otherwise.</summary>
    Corrected,

    /// <summary>The weekly overview.</summary>
    Bulletin,
}
