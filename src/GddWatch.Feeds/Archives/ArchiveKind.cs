namespace GddWatch.Feeds.Archives;

/// <summary>The archive formats that can be read.</summary>
public enum ArchiveKind
{
    /// <summary>US Climate Reference Network, daily files, product CRND0103.</summary>
    UscrnDaily,
}
