using System.Collections.Concurrent;
using System.Diagnostics;
using System.Globalization;
using GddWatch.Tests.Commands;
using Xunit;

namespace GddWatch.Tests.Crash;

/// <summary>The real program in a process of its own, with its clock put to a stated instant at its start.</summary>
internal sealed class ProgramProcess : IDisposable
{
    /// <summary>The exit code of a process that was ended by kill -9.</summary>
    public const int KilledCode = 128 + 9;

    private readonly Process process;
    private readonly ConcurrentQueue<string> lines = [];
    private readonly ConcurrentDictionary<string, TaskCompletionSource> awaited = new(StringComparer.Ordinal);
    private readonly Task ended;

    private ProgramProcess(ProcessStartInfo start)
    {
        process = Process.Start(start) ?? throw new InvalidOperationException("The program did not start.");
        process.OutputDataReceived += (_, _) => { };
        process.ErrorDataReceived += (_, said) => Hear(said.Data);
        process.BeginOutputReadLine();
        process.BeginErrorReadLine();
        ended = process.WaitForExitAsync(CancellationToken.None);
    }

    public int Id => process.Id;

    public Task Ended => ended;

    public int ExitCode => process.ExitCode;

    /// <summary>What it said on the error stream.</summary>
    public IReadOnlyList<string> Lines => [.. lines];

    public static ProgramProcess Start(Workshop workshop, DateTimeOffset at, IReadOnlyDictionary<string, string> environment, params string[] arguments) =>
        Start("dotnet", environment, ArgumentsFor(workshop, at, workshop.Data, arguments));

    public static ProgramProcess Start(Workshop workshop, DateTimeOffset at, params string[] arguments) => Start(workshop, at, new Dictionary<string, string>(), arguments);

    /// <summary>A second program beside the first: the same configuration, a data folder of its own.</summary>
    public static ProgramProcess StartBeside(Workshop workshop, DateTimeOffset at, string data, params string[] arguments) =>
        Start("dotnet", new Dictionary<string, string>(), ArgumentsFor(workshop, at, data, arguments));

    /// <summary>The same as systemd starts it: its parent bears that name, by which it knows, and hands a stop on to it.</summary>
    public static ProgramProcess StartBySystemd(Workshop workshop, DateTimeOffset at, IReadOnlyDictionary<string, string> environment, params string[] arguments)
    {
        string systemd = Path.Combine(workshop.Folder, "systemd");
        File.CreateSymbolicLink(systemd, "/bin/sh");
        return Start(systemd, environment, ["-c", "dotnet \"$@\" & child=$!; trap 'kill -TERM $child' TERM; wait $child; code=$?; if [ $code -gt 128 ]; then wait $child; code=$?; fi; exit $code", "systemd", .. ArgumentsFor(workshop, at, workshop.Data, arguments)]);
    }

    /// <summary>kill -9.</summary>
    public void Kill()
    {
        try
        {
            process.Kill(entireProcessTree: true);
        }
        catch (InvalidOperationException)
        {
            // It has ended by itself.
        }
    }

    /// <summary>Asks it to stop, as systemd and a container's engine do, and gives how long it took.</summary>
    public async Task<TimeSpan> TerminateAsync()
    {
        long begun = Stopwatch.GetTimestamp();
        using (Process kill = Process.Start("kill", ["-TERM", process.Id.ToString(CultureInfo.InvariantCulture)])) await kill.WaitForExitAsync(TestContext.Current.CancellationToken);
        await ended.WaitAsync(TestContext.Current.CancellationToken);
        return Stopwatch.GetElapsedTime(begun);
    }

    /// <summary>Waits until it has said something on the error stream.</summary>
    public async Task HearsAsync(string text)
    {
        TaskCompletionSource said = awaited.GetOrAdd(text, _ => new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously));
        if (lines.Any(line => line.Contains(text, StringComparison.Ordinal))) said.TrySetResult();
        await Task.WhenAny(said.Task, ended).WaitAsync(TestContext.Current.CancellationToken);
        Assert.True(lines.Any(line => line.Contains(text, StringComparison.Ordinal)), $"The program ended without saying \"{text}\":\n{string.Join('\n', lines)}");
    }

    public void Dispose()
    {
        if (!process.HasExited) Kill();
        process.WaitForExit();
        process.Dispose();
    }

    private static ProgramProcess Start(string program, IReadOnlyDictionary<string, string> environment, IEnumerable<string> arguments)
    {
        var start = new ProcessStartInfo(program, arguments) { UseShellExecute = false, RedirectStandardOutput = true, RedirectStandardError = true };
        foreach ((string name, string value) in environment) start.Environment[name] = value;
        return new ProgramProcess(start);
    }

    private static string[] ArgumentsFor(Workshop workshop, DateTimeOffset at, string data, string[] arguments) =>
        [Path.Combine(AppContext.BaseDirectory, "GddWatch.SetClock.dll"), at.ToString("O", CultureInfo.InvariantCulture), .. arguments, "--config", workshop.Config, "--data", data];

    private void Hear(string? line)
    {
        if (line is null) return;
        lines.Enqueue(line);
        foreach ((_, TaskCompletionSource said) in awaited.Where(each => line.Contains(each.Key, StringComparison.Ordinal))) said.TrySetResult();
    }
}
