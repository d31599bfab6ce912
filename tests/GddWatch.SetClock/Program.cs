using System.Globalization;
using System.Text;
using GddWatch.Commands;

namespace GddWatch.SetClock;

/// <summary>
/// The program itself, all but its first lines, on a day that a test names: the first argument is the instant to which the clock is put, the others are the
/// program's own. So a process that is killed and started again can live through a season.
/// </summary>
internal static class Program
{
    private static async Task<int> Main(string[] arguments)
    {
        var clock = new StartedClock(DateTimeOffset.Parse(arguments[0], CultureInfo.InvariantCulture));
        await using var output = new StreamWriter(Console.OpenStandardOutput(), new UTF8Encoding(false)) { AutoFlush = true, NewLine = "\n" };
        await using var error = new StreamWriter(Console.OpenStandardError(), new UTF8Encoding(false)) { AutoFlush = true, NewLine = "\n" };
        return await CommandLine.RunAsync(arguments[1..], new Terminal(output, error, clock, isInteractive: false), CancellationToken.None);
    }
}
