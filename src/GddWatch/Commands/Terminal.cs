using Spectre.Console;

namespace GddWatch.Commands;

/// <summary>Where a command writes and what time it is: results to the output, everything else to the error stream.</summary>
internal sealed class Terminal(TextWriter output, TextWriter error, TimeProvider clock, bool isInteractive)
{
    private const int WidthWithoutTerminal = 118;

    public TextWriter Output { get; } = output;

    public TextWriter Error { get; } = error;

    public TimeProvider Clock { get; } = clock;

    /// <summary>Whether a person watches the error stream, so that progress is worth showing.</summary>
    public bool IsInteractive { get; } = isInteractive;

    /// <summary>For tables: as wide as the window, or a fixed width where the output goes to a file or another program.</summary>
    public IAnsiConsole Tables()
    {
        bool toPerson = IsInteractive && !Console.IsOutputRedirected;
        IAnsiConsole console = AnsiConsole.Create(new AnsiConsoleSettings
        {
            Out = new AnsiConsoleOutput(Output),
            Ansi = toPerson ? AnsiSupport.Detect : AnsiSupport.No,
        });
        if (!toPerson) console.Profile.Width = WidthWithoutTerminal;
        return console;
    }

    /// <summary>For progress.</summary>
    public IAnsiConsole Progress() => AnsiConsole.Create(new AnsiConsoleSettings { Out = new AnsiConsoleOutput(Error) });
}
