namespace GddWatch.Tests.Storage;

/// <summary>Where a test keeps things: the same tests hold for both.</summary>
public enum DatabaseKind
{
    /// <summary>In a file of SQLite.</summary>
    File,

    /// <summary>On a PostgreSQL server that this run of the tests has started.</summary>
    Server,
}
