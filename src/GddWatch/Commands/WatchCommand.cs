using System.CommandLine;
using GddWatch.Feeds.Services;
using GddWatch.Feeds.Services.Fetching;
using GddWatch.Notices.Channels;
using GddWatch.Storage;
using GddWatch.Watching;
using GddWatch.Watching.Health;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Hosting.Systemd;
using Microsoft.Extensions.Logging;

namespace GddWatch.Commands;

/// <summary>The hosted worker.</summary>
internal static class WatchCommand
{
    public static Command Create(CommonOptions common, Terminal terminal)
    {
        Option<bool> once = new("--once") { Description = "Makes one pass and exits, for a scheduler." };
        var command = new Command("watch", "The service: reads the weather every day, judges the windows and sends the mails, until it is stopped.") { once };
        command.SetAction((parsed, stop) => RunUntilStoppedAsync(parsed.GetValue(common.Config)!, parsed.GetValue(common.Data)!, parsed.GetValue(once), terminal, stop));
        return command;
    }

    /// <summary>Ten seconds are promised, from the signal to the end of the process.</summary>
    private static readonly TimeSpan ShutdownTimeout = TimeSpan.FromSeconds(8);

    private static string Version => typeof(WatchCommand).Assembly.GetName().Version?.ToString(3) ?? "0";

    private static async Task<int> RunUntilStoppedAsync(string config, string data, bool once, Terminal terminal, CancellationToken stop)
    {
        try
        {
            return await RunAsync(config, data, once, terminal, stop);
        }
        catch (OperationCanceledException) when (stop.IsCancellationRequested && !once)
        {
            // Stopped while it was starting: nothing was begun that would be missed.
            terminal.Error.WriteLine("Stopped; what was begun is kept and goes on at the next start.");
            return ExitCode.Done;
        }
    }

    private static async Task<int> RunAsync(string config, string data, bool once, Terminal terminal, CancellationToken stop)
    {
        if (Workplace.Open(config, terminal) is not { } place) return ExitCode.WrongUsageOrConfiguration;
        if (Mailing.Open(config, data, place.Configuration, terminal) is not { } mailing) return ExitCode.WrongUsageOrConfiguration;
        if (Keeping.Find(config, data, terminal) is not { } keeping) return ExitCode.WrongUsageOrConfiguration;
        bool isInFile = keeping.Place is DatabasePlace.InFile;
        string taken = "";
        // Several may share the work on a server; a file is for one.
        using WorkerLock? alone = isInFile ? WorkerLock.Take(data, terminal.Clock, place.Zone, out taken) : null;
        if (taken.Length > 0)
        {
            terminal.Error.WriteLine(taken);
            return ExitCode.Failed;
        }

        // Opened before the host starts: .NET 10 runs the whole of a background service in the background.
        await using Database database = await keeping.OpenAsync(stop);
        var outbox = new Outbox(database);
        await using IDeliveryChannel channel = mailing.OpenChannel(terminal.Clock);
        DeliveryRules rules = mailing.RulesFor(place.Region);
        var delivery = new DeliveryPass(outbox, mailing.Composer, channel, rules, place.Zone, new Random().NextDouble);
        await using var seat = new JudgingSeat(database);
        var store = new WeatherStore(database);
        using WeatherServices services = WeatherServices.Create(new ServiceClient(place.Region.OperatorAddress, Version), terminal.Clock);
        var intake = new WeatherIntake(place, new ServiceFetch(place.Configuration, services, store), store);
        var pulse = new Pulse(terminal.Clock, place.Zone);
        using var meters = new WatchMeters(pulse);
        using Telemetry telemetry = Telemetry.Open(forPort: mailing.HealthPort is not null, Version);
        await using HealthPort? port = await OpenPortAsync(mailing.HealthPort, pulse, telemetry, terminal, stop);
        if (port is null && mailing.HealthPort is not null) return ExitCode.Failed;
        HostApplicationBuilder builder = Host.CreateEmptyApplicationBuilder(new HostApplicationBuilderSettings { ApplicationName = "gddwatch" });
        // Tells systemd when it is ready and when it stops, where it was started by it; elsewhere it does nothing.
        builder.Services.AddSystemd();
        builder.Services.Configure<HostOptions>(options => options.ShutdownTimeout = ShutdownTimeout);
        builder.Logging.ClearProviders();
        builder.Logging.AddProvider(new LineLog(terminal.Error, terminal.Clock, place.Zone, SystemdHelpers.IsSystemdService()));
        builder.Logging.SetMinimumLevel(LogLevel.Information);
        // The host's own chatter is not for an adviser; what goes wrong in it is.
        builder.Logging.AddFilter("Microsoft", LogLevel.Warning);
        var outcome = new WorkerOutcome();
        builder.Services.AddSingleton<IHostedService>(services => new Worker(
            place, intake, new JournalStore(database).LoadAsync, new DailyPass(place.Configuration, database, mailing.Bulletin, rules, new CalendarFolder(DataFolder.Calendar(data))), delivery, outbox, seat, new WorkerPlan(mailing.PassAt, place.Region.TimeZone, once), terminal.Clock, outcome,
            pulse, meters, isInFile ? () => DataFolder.CheckStillThere(data) : () => { }, services.GetRequiredService<IHostApplicationLifetime>(), services.GetRequiredService<ILogger<Worker>>()));
        using IHost host = builder.Build();
        await host.RunAsync(stop);
        // A background service that fails stops the host with exit code 0 in .NET 10, so the outcome is carried beside it.
        return outcome.Failed ? ExitCode.Failed : ExitCode.Done;
    }

    private static async Task<HealthPort?> OpenPortAsync(int? port, Pulse pulse, Telemetry telemetry, Terminal terminal, CancellationToken stop)
    {
        if (port is not { } number) return null;
        try
        {
            return await HealthPort.OpenAsync(number, pulse, telemetry.Meters!, stop);
        }
        catch (IOException fault)
        {
            terminal.Error.WriteLine($"The port {number} of this machine, on which the service would say how it is, cannot be used ({fault.Message}) Name a free one in Health:Port, or 0 for none.");
            return null;
        }
    }
}
