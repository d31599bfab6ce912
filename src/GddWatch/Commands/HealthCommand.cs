using System.CommandLine;
using System.Net.Sockets;
using System.Text.Json;
using GddWatch.Configuration.Settings;
using GddWatch.Watching.Health;

namespace GddWatch.Commands;

/// <summary>Asks the running service of this machine how it is; for whatever watches over it, such as a container's health check.</summary>
internal static class HealthCommand
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(5);

    public static Command Create(CommonOptions common, Terminal terminal)
    {
        var command = new Command("health", "Asks the running service of this machine how it is, by its port (Health:Port). Exits 0 where it is well and 1 where it is not or does not answer.");
        command.SetAction((parsed, stop) => RunAsync(parsed.GetValue(common.Config)!, terminal, stop));
        return command;
    }

    private static async Task<int> RunAsync(string config, Terminal terminal, CancellationToken stop)
    {
        SettingsReading reading = SettingsReader.Read(config);
        foreach (string fault in reading.Faults) terminal.Error.WriteLine($"{Path.Combine(config, SettingsReader.File)} or the environment: {fault}");
        if (reading.Settings is not { } settings) return ExitCode.WrongUsageOrConfiguration;
        if (settings.HealthPort is not { } port)
        {
            terminal.Error.WriteLine("The service has no port to be asked by. Give one in Health:Port of appsettings.json, or in the environment variable Health__Port, to both the service and this command.");
            return ExitCode.WrongUsageOrConfiguration;
        }

        HealthReport report = await AskAsync(port, terminal.Clock, stop);
        (report.IsWell ? terminal.Output : terminal.Error).WriteLine(report.Words);
        return report.IsWell ? ExitCode.Done : ExitCode.Failed;
    }

    private static async Task<HealthReport> AskAsync(int port, TimeProvider clock, CancellationToken stop)
    {
        using var limit = new CancellationTokenSource(Patience, clock);
        using var either = CancellationTokenSource.CreateLinkedTokenSource(limit.Token, stop);
        // By no proxy: the question is for this machine.
        using var handler = new SocketsHttpHandler { UseProxy = false, AllowAutoRedirect = false };
        using var client = new HttpClient(handler);
        try
        {
            using HttpResponseMessage answer = await client.GetAsync(HealthPort.Readiness(port), either.Token);
            using JsonDocument body = JsonDocument.Parse(await answer.Content.ReadAsStringAsync(either.Token));
            return new HealthReport(answer.IsSuccessStatusCode, body.RootElement.GetProperty("words").GetString() ?? "");
        }
        catch (OperationCanceledException) when (!stop.IsCancellationRequested)
        {
            return new HealthReport(false, $"The service does not answer on port {port} within {Patience.TotalSeconds} s.");
        }
        catch (HttpRequestException fault) when (fault.InnerException is SocketException)
        {
            return new HealthReport(false, $"No service answers on port {port} of this machine.");
        }
        catch (Exception fault) when (fault is HttpRequestException or JsonException or KeyNotFoundException or InvalidOperationException)
        {
            return new HealthReport(false, $"What answers on port {port} of this machine is not this service.");
        }
    }
}
