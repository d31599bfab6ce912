using System.CommandLine;
using System.Text;
using GddWatch.Commands.Output;
using GddWatch.Commands.Recording;
using GddWatch.Storage;
using GddWatch.Storage.Upkeep;

namespace GddWatch.Commands;

/// <summary>Writes everything that is kept in forms that any program reads.</summary>
internal static class KeepExportCommand
{
    private const string Explanation = "README.txt";
    private const string Journal = "journal.csv";

    public static Command Create(CommonOptions common, Terminal terminal)
    {
        Argument<string> folder = new("FOLDER") { Description = "Where to write; a folder that is not there yet or is empty." };
        var command = new Command("export", "Writes everything that is kept as CSV files with a README.txt that says what stands in them. `gddwatch record import` reads the journal back.") { folder };
        command.SetAction(async (parsed, stop) =>
        {
            string path = Path.GetFullPath(parsed.GetValue(folder)!);
            if (Keeping.Find(parsed.GetValue(common.Config)!, parsed.GetValue(common.Data)!, terminal) is not { } keeping) return ExitCode.WrongUsageOrConfiguration;
            if (!keeping.SayWhereNothingIsKept()) return ExitCode.Failed;
            if (File.Exists(path) || (Directory.Exists(path) && Directory.EnumerateFileSystemEntries(path).Any()))
            {
                terminal.Error.WriteLine($"FOLDER: There is something already; it was left as it is. Found: \"{path}\". Accepted: a folder that is not there yet or is empty.");
                return ExitCode.WrongUsageOrConfiguration;
            }

            await using Database database = await keeping.OpenAsync(stop);
            long rows = await WriteWholeAsync(path, unfinished => WriteAsync(database, unfinished, stop));
            terminal.Output.WriteLine($"Written: {rows} rows from {keeping.Place} to {path}. They hold people's addresses; {Explanation} there says what stands in them.");
            return ExitCode.Done;
        });
        return command;
    }

    /// <summary>Under another name until it is whole.</summary>
    private static async Task<long> WriteWholeAsync(string path, Func<string, Task<long>> write)
    {
        string unfinished = $"{path}.{Path.GetRandomFileName()}.unfinished";
        if (OperatingSystem.IsWindows()) Directory.CreateDirectory(unfinished);
        else Directory.CreateDirectory(unfinished, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
        try
        {
            long rows = await write(unfinished);
            if (Directory.Exists(path)) Directory.Delete(path);
            Directory.Move(unfinished, path);
            return rows;
        }
        catch
        {
            Directory.Delete(unfinished, recursive: true);
            throw;
        }
    }

    private static async Task<long> WriteAsync(Database database, string folder, CancellationToken stop)
    {
        long rows = 0;
        await new Exporting(database).RunAsync(
            async journal =>
            {
                // From the beginning, should a server have been gone for a while.
                rows = journal.Count;
                await using StreamWriter file = Create(folder, Journal);
                ProgramText.WriteCsv(file, JournalTable.ColumnsWithHistory, journal.Select(JournalTable.CellsWithHistory));
            },
            async (table, cells) =>
            {
                await using StreamWriter file = Create(folder, $"{table.Name}.csv");
                rows += await ProgramText.WriteCsvAsync(file, [.. table.Columns.Select(column => column.Name)], cells);
            },
            stop);
        await using StreamWriter explanation = Create(folder, Explanation);
        await explanation.WriteAsync(Explain());
        return rows;
    }

    private static StreamWriter Create(string folder, string name)
    {
        var options = new FileStreamOptions { Mode = FileMode.Create, Access = FileAccess.Write };
        if (!OperatingSystem.IsWindows()) options.UnixCreateMode = UnixFileMode.UserRead | UnixFileMode.UserWrite;
        return new StreamWriter(Path.Combine(folder, name), new UTF8Encoding(false), options) { NewLine = "\n" };
    }

    private static string Explain()
    {
        var text = new StringBuilder();
        text.Append("All that GddWatch keeps, as it was at one moment. Each file is CSV in UTF-8: a header row, commas, quotation marks around a cell that needs them, a decimal point.\n");
        text.Append("Days are ISO dates of the site's calendar. Instants are UTC. A cell that is empty says nothing is there.\n\n");
        text.Append($"{Journal}: What people recorded, mended and withdrawn entries too. `gddwatch record import` reads it, and leaves aside what was mended or withdrawn.\n");
        text.Append($"  {string.Join(", ", JournalTable.ColumnsWithHistory)}\n");
        foreach (ExportedTable table in ExportedTables.All)
        {
            text.Append($"\n{table.Name}.csv: {table.Words}\n");
            foreach (ExportedColumn column in table.Columns) text.Append($"  {column.Name}: {column.Words}\n");
        }

        return text.ToString();
    }
}
