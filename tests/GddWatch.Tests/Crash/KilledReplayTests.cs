using System.Diagnostics;
using GddWatch.Tests.Commands;
using Xunit;

namespace GddWatch.Tests.Crash;

/// <summary>The real process, killed without warning at moments that its own writing sets, and started again.</summary>
public sealed class KilledReplayTests
{
    private const int Kills = 6;

    [Fact]
    public async Task However_often_it_is_killed_the_mails_are_those_of_an_undisturbed_run_and_none_is_written_twice()
    {
        using Workshop calm = Workshop.WithSamples();
        await RunToEndAsync(calm);
        using Workshop hunted = Workshop.WithSamples();
        var chance = new Random(20260415);
        var written = new Dictionary<string, DateTime>(StringComparer.Ordinal);
        int killed = 0;
        for (int i = 0; i < Kills; i++)
        {
            killed += await RunAndKillAsync(hunted, afterEvents: chance.Next(5, 120)) ? 1 : 0;
            foreach (string name in hunted.ReplayMails.Keys.Where(name => name.EndsWith(".eml", StringComparison.Ordinal)))
            {
                DateTime at = File.GetLastWriteTimeUtc(Path.Combine(hunted.Data, "replay", "mail", name));
                if (!written.TryAdd(name, at)) Assert.Equal(written[name], at);
            }
        }

        Assert.True(killed > 0, "The process was never killed before it had ended: the test tested nothing.");
        await RunToEndAsync(hunted);
        Assert.Equal(calm.ReplayMails, hunted.ReplayMails);
        Assert.All(written, each => Assert.Equal(each.Value, File.GetLastWriteTimeUtc(Path.Combine(hunted.Data, "replay", "mail", each.Key))));
    }

    private static async Task RunToEndAsync(Workshop workshop)
    {
        using Process process = Start(workshop);
        string error = await process.StandardError.ReadToEndAsync(TestContext.Current.CancellationToken);
        await process.WaitForExitAsync(TestContext.Current.CancellationToken);
        Assert.True(process.ExitCode == 0, error);
    }

    /// <summary>Kills the process once so many things have happened in its folder; false where it had ended before.</summary>
    private static async Task<bool> RunAndKillAsync(Workshop workshop, int afterEvents)
    {
        Directory.CreateDirectory(Path.Combine(workshop.Data, "replay", "mail"));
        var enough = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
        int events = 0;
        using var watcher = new FileSystemWatcher(workshop.Data) { IncludeSubdirectories = true, InternalBufferSize = 65536 };
        watcher.Created += Count;
        watcher.Changed += Count;
        watcher.Renamed += Count;
        watcher.EnableRaisingEvents = true;
        using Process process = Start(workshop);
        Task ended = process.WaitForExitAsync(TestContext.Current.CancellationToken);
        await Task.WhenAny(enough.Task, ended);
        if (process.HasExited) return false;
        process.Kill();
        await ended;
        return true;

        void Count(object sender, FileSystemEventArgs e)
        {
            if (Interlocked.Increment(ref events) >= afterEvents) enough.TrySetResult();
        }
    }

    private static Process Start(Workshop workshop)
    {
        var start = new ProcessStartInfo("dotnet") { UseShellExecute = false, RedirectStandardOutput = true, RedirectStandardError = true };
        foreach (string argument in (string[])[Path.Combine(AppContext.BaseDirectory, "gddwatch.dll"), "replay", "--from", "2025-03-15", "--until", "2025-05-31", "--config", workshop.Config, "--data", workshop.Data])
        {
            start.ArgumentList.Add(argument);
        }

        Process process = Process.Start(start) ?? throw new InvalidOperationException("The program did not start.");
        process.OutputDataReceived += (_, _) => { };
        process.BeginOutputReadLine();
        return process;
    }
}
