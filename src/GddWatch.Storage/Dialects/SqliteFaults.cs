using Microsoft.Data.Sqlite;

namespace GddWatch.Storage.Dialects;

/// <summary>What SQLite's refusals mean for whoever runs the service.</summary>
internal static class SqliteFaults
{
    // Result codes of SQLite (sqlite.org/rescode.html, SEEN in the provider's exceptions during the tests except FULL and IOERR, MEMORY).
    private const int Busy = 5;
    private const int Locked = 6;
    private const int ReadOnly = 8;
    private const int InputOutput = 10;
    private const int Corrupt = 11;
    private const int Full = 13;
    private const int CannotOpen = 14;
    private const int NotADatabase = 26;

    /// <summary>Less than SQLite asks for at a time [bytes].</summary>
    private const long LeastRoom = 64 * 1024;

    public static StorageException Explain(string path, SqliteException fault) => new(Sentence(path, fault), fault);

    public static StorageException Damaged(string path, string finding) => new(
        $"The database '{path}' is damaged ({finding}). Put the latest backup in its place, or move it away to start afresh.");

    public static StorageException MayNotBeWritten(string path) => new(ReadOnlySentence(path));

    private static string ReadOnlySentence(string path) =>
        $"The database '{path}' may be read but not written. Give the account that runs this program leave to write the file and its folder.";

    private static string FullSentence(string path) => $"The disk that holds the database '{path}' is full. Free some space and try again; what was kept before is safe.";

    private static bool HasNoRoom(string path)
    {
        try
        {
            return new DriveInfo(Path.GetDirectoryName(Path.GetFullPath(path))!).AvailableFreeSpace < LeastRoom;
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException or ArgumentException)
        {
            // A disk that does not even tell its size has other troubles.
            return false;
        }
    }

    private static string Sentence(string path, SqliteException fault) => fault.SqliteErrorCode switch
    {
        Busy or Locked =>
            $"The database '{path}' is in use by another program. Stop that program, or wait until it has finished, and try again.",
        ReadOnly => ReadOnlySentence(path),
        // A file of its own that SQLite cannot make larger is told as a failure of the disk; people must hear what to do about it.
        InputOutput when HasNoRoom(path) => FullSentence(path),
        InputOutput =>
            $"Reading or writing the database '{path}' failed ({fault.Message}). Check the disk and its connection, and try again.",
        Corrupt =>
            $"The database '{path}' is damaged ({fault.Message}). Put the latest backup in its place, or move it away to start afresh.",
        Full => FullSentence(path),
        CannotOpen =>
            $"The database '{path}' cannot be opened. Check that its folder exists and that the account that runs this program may write there.",
        NotADatabase =>
            $"The file '{path}' is not a database. Name another data folder, or move the file away and a new database is made.",
        _ => $"The database '{path}' could not be used ({fault.Message}).",
    };
}
