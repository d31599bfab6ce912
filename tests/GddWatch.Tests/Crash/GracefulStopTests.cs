using System.Net;
using System.Net.Sockets;
using System.Text.Json;
using GddWatch.Tests.Commands;
using GddWatch.Tests.Loopback;
using GddWatch.Tests.Storage;
using Npgsql;
using Xunit;

namespace GddWatch.Tests.Crash;

/// <summary>The real process is asked to stop (SIGTERM) at the worst moments: it ends with 0 within ten seconds, and what was begun is not lost.</summary>
public sealed class GracefulStopTests
{
    private static readonly TimeSpan Promised = TimeSpan.FromSeconds(10);
    private static readonly DateOnly Day = new(2025, 4, 25);
    private static readonly DateTimeOffset Noon = new(2025, 4, 25, 17, 0, 0, TimeSpan.Zero);

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task While_a_weather_service_keeps_it_waiting()
    {
        using var silent = new TcpListener(IPAddress.Loopback, 0);
        silent.Start();
        using Workshop workshop = Workshop.WithOneLawn("");
        string region = Path.Combine(workshop.Config, "region.yaml");
        string[] lines = [.. File.ReadAllLines(region).Where(line => !line.Contains("columns:", StringComparison.Ordinal) && !line.Contains("units: {", StringComparison.Ordinal))];
        File.WriteAllLines(region, lines.Select(line => line.Replace("- csv: lawn.csv", $"- {{ service: open-meteo, base-address: \"http://127.0.0.1:{((IPEndPoint)silent.LocalEndpoint).Port}/\" }}", StringComparison.Ordinal)));
        using ProgramProcess program = ProgramProcess.Start(workshop, Noon, "watch");
        Task<Socket> asked = silent.AcceptSocketAsync(Cancel).AsTask();
        await Task.WhenAny(asked, program.Ended);
        Assert.False(program.Ended.IsCompleted, string.Join('\n', program.Lines));
        await EndsWellAsync(program);
        (await asked).Dispose();
    }

    [Theory]
    [InlineData(1)]
    [InlineData(25)]
    public async Task While_it_starts_and_in_the_middle_of_a_pass(int writes)
    {
        using Workshop workshop = Workshop.WithSamples();
        Directory.CreateDirectory(workshop.Data);
        var reading = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
        int seen = 0;
        using var watcher = new FileSystemWatcher(workshop.Data);
        watcher.Created += Write;
        watcher.Changed += Write;
        watcher.EnableRaisingEvents = true;
        using ProgramProcess program = ProgramProcess.Start(workshop, Noon, "watch");
        await Task.WhenAny(reading.Task, program.Ended).WaitAsync(Cancel);
        await EndsWellAsync(program);
        // It goes on from there.
        workshop.PutClockTo(Noon);
        Ran next = await workshop.RunAsync("watch", "--once");
        Assert.True(next.Code == 0, next.Error);

        void Write(object sender, FileSystemEventArgs e)
        {
            if (Interlocked.Increment(ref seen) >= writes) reading.TrySetResult();
        }
    }

    [Fact]
    public async Task While_the_mail_server_keeps_silent_after_the_mail()
    {
        await using var server = new ScriptedMailServer(ScriptedMailServer.UpTo(("MAIL", "250 ok"), ("RCPT", "250 ok"), ("DATA", "354 go on"), (ScriptedMailServer.WholeMail, ScriptedMailServer.Silence)));
        using Workshop workshop = Workshop.WithOneLawn(SmoothWeather.Csv(new DateOnly(2024, 1, 1), Day));
        File.WriteAllText(Path.Combine(workshop.Config, "appsettings.json"), $$"""{ "Mail": { "Host": "127.0.0.1", "Port": "{{server.Port}}", "Security": "none", "From": "service@example.org", "Timeout": "00:10:00" } }""");
        using ProgramProcess program = ProgramProcess.Start(workshop, Noon, "watch");
        await Task.WhenAny(server.IsSilent, program.Ended).WaitAsync(Cancel);
        await EndsWellAsync(program);
        // Nobody knows whether it arrived, so it is kept and will be sent again.
        Assert.Contains(KeptTables.Read(Path.Combine(workshop.Data, "gddwatch.db")).Rows, row => row.Contains("state=queued", StringComparison.Ordinal) && row.Contains("last_outcome=unknown", StringComparison.Ordinal));
    }

    [Fact]
    public async Task While_the_database_keeps_silent_after_a_mail_was_accepted()
    {
        PostgresCluster cluster = await PostgresCluster.SharedAsync();
        var at = new NpgsqlConnectionStringBuilder((await cluster.NewAsync()).Connection);
        await using var line = new FreezableLine(at.Port);
        at.Port = line.Port;
        await using var server = new WitnessMailServer();
        var accepted = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
        server.At = step =>
        {
            if (step != SmtpStep.AcceptedUnanswered) return false;
            line.Freeze();
            accepted.TrySetResult();
            return false;
        };
        using Workshop workshop = Workshop.WithOneLawn(SmoothWeather.Csv(new DateOnly(2024, 1, 1), Day));
        File.WriteAllText(Path.Combine(workshop.Config, "appsettings.json"), $$"""
            { "Mail": { "Host": "127.0.0.1", "Port": "{{server.Port}}", "Security": "none", "From": "service@example.org" }, "Storage": { "Kind": "postgresql", "Connection": {{JsonSerializer.Serialize(at.ConnectionString)}} } }
            """);
        using ProgramProcess program = ProgramProcess.Start(workshop, Noon, "watch");
        await Task.WhenAny(accepted.Task, program.Ended).WaitAsync(Cancel);
        await EndsWellAsync(program);
    }

    private static async Task EndsWellAsync(ProgramProcess program)
    {
        TimeSpan took = await program.TerminateAsync();
        string said = string.Join('\n', program.Lines);
        Assert.True(took < Promised, $"It took {took.TotalSeconds:0.0} s:\n{said}");
        Assert.True(program.ExitCode == 0, $"It ended with {program.ExitCode}:\n{said}");
        Assert.Contains("Stopped; what was begun is kept and goes on at the next start.", said, StringComparison.Ordinal);
        Assert.DoesNotContain("   at ", said, StringComparison.Ordinal);
    }
}
