namespace GddWatch.Feeds.Faults;

/// <summary>How bad a fault is.</summary>
public enum FaultSeverity
{
    /// <summary>Worth knowing; nothing was left out.</summary>
    Remark,

    /// <summary>A value or a row was left out; the rest is used.</summary>
    LeftOut,

    /// <summary>The whole file or configuration cannot be used.</summary>
    Refused,
}
