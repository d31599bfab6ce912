using System.Globalization;
using Microsoft.Data.Sqlite;

namespace GddWatch.Storage.Dialects;

/// <summary>
/// The database as a file. Only SQLite itself ever opens an existing one: on Unix, closing a second handle on it would drop the locks that SQLite holds.
/// </summary>
internal static class DatabaseFile
{
    private const UnixFileMode OwnersFile = UnixFileMode.UserRead | UnixFileMode.UserWrite;
    private const UnixFileMode OwnersFolder = OwnersFile | UnixFileMode.UserExecute;

    /// <summary>Makes the folder and an empty file where there are none, for the owner only: they hold people's addresses.</summary>
    /// <exception cref="StorageException">They cannot be made.</exception>
    public static void Make(string path)
    {
        try
        {
            string folder = Path.GetDirectoryName(path) ?? throw new StorageException($"'{path}' is a folder. Name a file for the database.");
            if (Directory.Exists(path))
                throw new StorageException($"'{path}' is a folder. Name a file for the database, or move the folder away.");
            if (OperatingSystem.IsWindows())
                Directory.CreateDirectory(folder);
            else
                Directory.CreateDirectory(folder, OwnersFolder);
            if (!File.Exists(path))
                MakeEmpty(path);
        }
        catch (IOException) when (File.Exists(path))
        {
            // Another program that starts at the same instant has made it.
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            throw new StorageException(
                $"The database '{path}' cannot be made ({fault.Message}). Check that the account that runs this program may write to its folder.", fault);
        }
    }

    /// <summary>Keeps a copy of what is committed beside the database.</summary>
    /// <exception cref="StorageException">It cannot be made.</exception>
    public static void BackUp(string connectionString, string path, DateTimeOffset now)
    {
        string stamp = now.UtcDateTime.ToString("yyyyMMdd'T'HHmmss'Z'", CultureInfo.InvariantCulture);
        string backup = $"{path}.{stamp}.backup";
        try
        {
            CopyWhole(connectionString, backup);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException or SqliteException)
        {
            throw new StorageException(
                $"The database '{path}' needs a change of its form, and the backup '{backup}' that comes first cannot be made ({fault.Message}). "
                + "Nothing was changed. Make room beside the database and start again.",
                fault);
        }
    }

    /// <summary>Copies what is committed into a file, which is there whole or not at all.</summary>
    public static void CopyWhole(string connectionString, string target)
    {
        // Under another name until it is whole, so that a copy broken off is never taken for a backup.
        string unfinished = $"{target}.unfinished";
        File.Delete(unfinished);
        MakeEmpty(unfinished);
        Copy(connectionString, unfinished);
        File.Move(unfinished, target, overwrite: true);
    }

    private static void Copy(string connectionString, string target)
    {
        using SqliteConnection from = new(connectionString);
        using SqliteConnection to = new(new SqliteConnectionStringBuilder { DataSource = target, Pooling = false }.ConnectionString);
        from.Open();
        to.Open();
        from.BackupDatabase(to);
    }

    private static void MakeEmpty(string path)
    {
        FileStreamOptions options = new() { Mode = FileMode.CreateNew, Access = FileAccess.Write };
        if (!OperatingSystem.IsWindows())
            options.UnixCreateMode = OwnersFile;
        using FileStream made = new(path, options);
    }
}
