using GddWatch.Configuration.Settings;
using GddWatch.Storage;
using GddWatch.Watching;

namespace GddWatch.Commands;

/// <summary>Where things are kept: in a file of the data folder, or on a server where one is configured.</summary>
internal sealed class Keeping(DatabasePlace place, Terminal terminal)
{
    /// <summary>The place.</summary>
    public DatabasePlace Place { get; } = place;

    /// <summary>Reads the settings; where they are wrong, says all that is wrong and gives null.</summary>
    public static Keeping? Find(string configFolder, string dataFolder, Terminal terminal)
    {
        StorageReading reading = StorageReader.Read(configFolder);
        foreach (string fault in reading.Faults) terminal.Error.WriteLine($"{Path.Combine(configFolder, SettingsReader.File)} or the environment: {fault}");
        return reading.Faults.Count == 0 ? new Keeping(reading.Server as DatabasePlace ?? InFile(dataFolder), terminal) : null;
    }

    /// <summary>The file of a data folder.</summary>
    public static DatabasePlace InFile(string dataFolder) => new DatabasePlace.InFile(DataFolder.Database(dataFolder));

    /// <summary>Opens it; that a server does not answer and is tried again is said on the error stream.</summary>
    public Task<Database> OpenAsync(CancellationToken stop) => Database.OpenAsync(Place, terminal.Clock, terminal.Error.WriteLine, stop);

    /// <summary>Whether anything is kept; where not, that is said.</summary>
    public bool SayWhereNothingIsKept()
    {
        if (Place.MayHoldSomething) return true;
        terminal.Error.WriteLine($"Nothing is kept in {Place} yet. Look whether --data names the folder in which the service keeps its database.");
        return false;
    }

    /// <summary>Reads something that is kept, or gives what stands for nothing where nobody has kept anything yet.</summary>
    public async Task<T> ReadAsync<T>(T nothing, Func<Database, Task<T>> read, CancellationToken stop)
    {
        if (!Place.MayHoldSomething) return nothing;
        await using Database database = await OpenAsync(stop);
        return await read(database);
    }
}
