using System.CommandLine;

namespace GddWatch.Commands;

/// <summary>What is done now and then with everything that is kept.</summary>
internal static class KeepCommand
{
    public static Command Create(CommonOptions common, Terminal terminal) => new("keep", "Looks after what is kept: backs it up, verifies it, exports it, takes out what is old.")
    {
        KeepBackupCommand.Create(common, terminal),
        KeepVerifyCommand.Create(common, terminal),
        KeepExportCommand.Create(common, terminal),
        KeepPruneCommand.Create(common, terminal),
    };
}
