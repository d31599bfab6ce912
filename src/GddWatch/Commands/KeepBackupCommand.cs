using System.CommandLine;
using GddWatch.Storage;

namespace GddWatch.Commands;

/// <summary>Copies the database while the service goes on.</summary>
internal static class KeepBackupCommand
{
    public static Command Create(CommonOptions common, Terminal terminal)
    {
        Argument<string> file = new("FILE") { Description = "Where to write the copy; a file that is not there yet." };
        var command = new Command("backup", "Copies the database as it is at one moment, while the service goes on. Of a PostgreSQL server, use pg_dump.") { file };
        command.SetAction(async (parsed, stop) =>
        {
            string path = parsed.GetValue(file)!;
            if (Keeping.Find(parsed.GetValue(common.Config)!, parsed.GetValue(common.Data)!, terminal) is not { } keeping) return ExitCode.WrongUsageOrConfiguration;
            if (!keeping.SayWhereNothingIsKept()) return ExitCode.Failed;
            if (Path.Exists(path))
            {
                terminal.Error.WriteLine($"FILE: There is something already; it was left as it is. Found: \"{path}\". Accepted: a file that is not there yet.");
                return ExitCode.WrongUsageOrConfiguration;
            }

            await using Database database = await keeping.OpenAsync(stop);
            await database.BackUpAsync(path, stop);
            terminal.Output.WriteLine($"Copied: {keeping.Place} to {path}. To go back to it, stop the service and put it in the place of the database, without the files whose names end in -wal and -shm.");
            return ExitCode.Done;
        });
        return command;
    }
}
