using GddWatch.Commands;
using GddWatch.Storage;

namespace GddWatch.Watching;

/// <summary>The folder of a replay: its own database and mails, kept for as long as the scenario is the same.</summary>
internal static class ReplayFolder
{
    /// <summary>The name under which the scenario is kept in the replay's database.</summary>
    public const string ScenarioValue = "replay-scenario";

    /// <summary>Opens the replay's database; where it was made for another scenario, it and its mails are removed first.</summary>
    public static async Task<Database> OpenAsync(string folder, string scenario, Terminal terminal, CancellationToken stop)
    {
        string path = DataFolder.Database(folder);
        bool existed = File.Exists(path);
        Database database = await Database.OpenAsync(path, terminal.Clock, stop);
        var values = new RegionValues(database);
        if (existed && await values.FindAsync(ScenarioValue, stop) != scenario)
        {
            await database.DisposeAsync();
            Clear(folder);
            terminal.Error.WriteLine($"Configuration, weather, days or program differ from the replay that lies in {folder}; it is made afresh.");
            database = await Database.OpenAsync(path, terminal.Clock, stop);
            values = new RegionValues(database);
        }

        await values.KeepAsync(ScenarioValue, scenario, stop);
        return database;
    }

    /// <summary>The last day that was lived through, or null.</summary>
    public static async Task<DateOnly?> LivedThroughAsync(Database database, CancellationToken stop)
    {
        IReadOnlyDictionary<string, DateOnly> judged = await new WindowStore(database).LoadLastJudgedAsync(stop);
        return judged.Count == 0 ? null : judged.Values.Min();
    }

    /// <summary>Mails first: should this be cut short, the database still says that the scenario is another.</summary>
    private static void Clear(string folder)
    {
        if (Directory.Exists(DataFolder.Mail(folder)))
        {
            foreach (string mail in Directory.EnumerateFiles(DataFolder.Mail(folder), "*.eml")) File.Delete(mail);
        }

        foreach (string file in Directory.EnumerateFiles(folder, "gddwatch.db*")) File.Delete(file);
    }
}
