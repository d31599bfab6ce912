namespace GddWatch.Storage;

/// <summary>What recording an entry changed.</summary>
public enum JournalChange
{
    /// <summary>It was recorded.</summary>
    Recorded,

    /// <summary>Nothing: it stood there before in the same words.</summary>
    AlreadyThere,

    /// <summary>Nothing: it was recorded before in the same words and mended or withdrawn since, and whoever brought it again did not know that.</summary>
    LeftAside,
}
