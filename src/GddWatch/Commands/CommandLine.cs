using System.CommandLine;
using GddWatch.Storage;

namespace GddWatch.Commands;

/// <summary>The commands of the program, put together in one place.</summary>
internal static class CommandLine
{
    /// <summary>Runs one command and gives its exit code: 0 done, 1 failed, 2 wrong usage or configuration.</summary>
    public static async Task<int> RunAsync(string[] arguments, Terminal terminal, CancellationToken stop)
    {
        var common = new CommonOptions();
        var root = new RootCommand("GddWatch tells lawn advisers when each lawn task's window opens, is past its best and closes, from soil temperature and accumulated heat.")
        {
            WatchCommand.Create(common, terminal),
            ReplayCommand.Create(common, terminal),
            StatusCommand.Create(common, terminal),
            DailyCommand.Create(common, terminal),
            BacktestCommand.Create(common, terminal),
            FitCommand.Create(common, terminal),
            RecordCommand.Create(common, terminal),
            CheckCommand.Create(common, terminal),
            KeepCommand.Create(common, terminal),
            ResumeCommand.Create(common, terminal),
            HealthCommand.Create(common, terminal),
        };
        root.Add(common.Config);
        root.Add(common.Data);
        root.Add(common.Format);
        ParseResult parsed = root.Parse(arguments);
        var invocation = new InvocationConfiguration
        {
            Output = terminal.Output,
            Error = terminal.Error,
            EnableDefaultExceptionHandler = false,
            ProcessTerminationTimeout = TimeSpan.FromSeconds(9.5),
        };
        try
        {
            int code = await parsed.InvokeAsync(invocation, stop);
            return parsed.Errors.Count > 0 ? ExitCode.WrongUsageOrConfiguration : code;
        }
        catch (StorageException fault)
        {
            terminal.Error.WriteLine(fault.Message);
            return ExitCode.Failed;
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException)
        {
            terminal.Error.WriteLine($"A file could not be read or written: {fault.Message} What had been kept before is unharmed.");
            return ExitCode.Failed;
        }
        catch (Exception fault) when (fault is not OperationCanceledException)
        {
            terminal.Error.WriteLine($"Something happened that should not: {fault.Message} ({fault.GetType().Name}). Nothing is half-kept. Please report it with the command that you gave.");
            return ExitCode.Failed;
        }
        catch (OperationCanceledException)
        {
            terminal.Error.WriteLine("Stopped before it was done; nothing is half-written, and running it again goes on from here.");
            return ExitCode.Failed;
        }
    }
}
