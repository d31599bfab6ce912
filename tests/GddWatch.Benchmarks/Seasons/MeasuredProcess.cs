using System.Diagnostics;
using System.Globalization;

namespace GddWatch.Benchmarks.Seasons;

/// <summary>A program run to its end: what it printed, how long it took, and how much memory it had at the most.</summary>
internal sealed record MeasuredProcess(string Output, double Seconds, double CpuSeconds, double PeakMB)
{
    /// <summary>Runs a program. What it says on its error stream is shown.</summary>
    /// <exception cref="InvalidOperationException">It failed.</exception>
    public static async Task<MeasuredProcess> RunAsync(string program, IEnumerable<string> arguments, CancellationToken stop)
    {
        ProcessStartInfo start = new(program, arguments) { RedirectStandardOutput = true, UseShellExecute = false };
        long begin = Stopwatch.GetTimestamp();
        using Process process = Process.Start(start) ?? throw new InvalidOperationException($"{program} did not start.");
        Task<string> output = process.StandardOutput.ReadToEndAsync(stop);
        long peak = 0;
        double cpu = 0;
        Task ended = process.WaitForExitAsync(stop);
        while (!ended.IsCompleted)
        {
            await Task.WhenAny(ended, Task.Delay(50, stop));
            try
            {
                process.Refresh();
                peak = Math.Max(peak, process.PeakWorkingSet64);
                cpu = process.TotalProcessorTime.TotalSeconds;
            }
            catch (InvalidOperationException)
            {
                // It ended between the two.
            }
        }

        double seconds = Stopwatch.GetElapsedTime(begin).TotalSeconds;
        string printed = await output;
        if (process.ExitCode != 0) throw new InvalidOperationException(string.Create(CultureInfo.InvariantCulture, $"{program} ended with {process.ExitCode}."));
        return new MeasuredProcess(printed, seconds, cpu, peak / 1e6);
    }
}
