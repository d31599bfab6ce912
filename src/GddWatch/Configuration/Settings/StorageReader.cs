using GddWatch.Storage;
using Microsoft.Extensions.Configuration;

namespace GddWatch.Configuration.Settings;

/// <summary>Reads the section Storage, apart from the others: most commands need to know where things are kept, and nothing of mails.</summary>
public static class StorageReader
{
    private const string ConnectionKey = $"{StorageSettings.Section}:{nameof(StorageSettings.Connection)}";

    private static readonly string[] Keys = ["Kind", "Connection", "Password", "PasswordFile"];

    /// <summary>Reads the section from the settings of a configuration folder and from the environment, which overrides them.</summary>
    public static StorageReading Read(string configFolder) =>
        SettingsReader.ReadPlatform(configFolder, Read, faults => new StorageReading(null, faults));

    /// <summary>Reads the section.</summary>
    /// <param name="configuration">The platform's configuration.</param>
    /// <param name="baseFolder">The folder where a relative path of a secrets file starts.</param>
    public static StorageReading Read(IConfiguration configuration, string baseFolder)
    {
        var faults = new SettingsFaults(baseFolder);
        faults.CheckKeys(configuration.GetSection(StorageSettings.Section), Keys);
        faults.CheckSecretInFiles(configuration, StorageSettings.Section, nameof(StorageSettings.Password), _ => true);
        faults.CheckSecretInFiles(configuration, StorageSettings.Section, nameof(StorageSettings.Connection), DatabasePlace.OnServer.HoldsPassword);
        StorageSettings settings = configuration.GetSection(StorageSettings.Section).Get<StorageSettings>() ?? new StorageSettings();
        DatabasePlace.OnServer? server = null;
        switch (settings.Kind.ToUpperInvariant())
        {
            case "SQLITE":
                // A server that is named and not used is a slip that would be noticed when it is too late.
                if (settings.Connection.Length > 0) faults.Add(ConnectionKey, null, "there is a server, but Storage:Kind says that things are kept in a file", "Storage:Kind postgresql, or no connection");
                break;
            case "POSTGRESQL":
                server = ReadServer(settings, faults);
                break;
            default:
                faults.Add("Storage:Kind", settings.Kind, "this word is not known", "sqlite or postgresql");
                break;
        }

        return new StorageReading(faults.All.Count == 0 ? server : null, faults.All);
    }

    private static DatabasePlace.OnServer? ReadServer(StorageSettings settings, SettingsFaults faults)
    {
        string? password = faults.ReadPassword(StorageSettings.Section, settings.Password, settings.PasswordFile);
        DatabasePlace.OnServer? server = DatabasePlace.OnServer.Read(settings.Connection, password, out string problem);
        if (server is null)
        {
            faults.Add(
                ConnectionKey,
                null,
                problem,
                "a connection string such as Host=db.example.org;Database=gddwatch;Username=gddwatch, with the password in Storage__Password or Storage:PasswordFile; to another machine with SSL Mode=VerifyFull, which is taken unless another is given, VerifyCA or Require");
        }

        return server;
    }
}
