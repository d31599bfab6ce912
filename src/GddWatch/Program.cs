using System.Text;
using GddWatch.Commands;

namespace GddWatch;

internal static class Program
{
    private static async Task<int> Main(string[] arguments)
    {
        await using var output = new StreamWriter(Console.OpenStandardOutput(), new UTF8Encoding(false)) { AutoFlush = true, NewLine = "\n" };
        await using var error = new StreamWriter(Console.OpenStandardError(), new UTF8Encoding(false)) { AutoFlush = true, NewLine = "\n" };
        return await CommandLine.RunAsync(arguments, new Terminal(output, error, TimeProvider.System, !Console.IsErrorRedirected), CancellationToken.None);
    }
}
