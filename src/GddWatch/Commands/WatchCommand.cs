using System.CommandLine;
using GddWatch.Feeds.Services;
using GddWatch.Feeds.Services.Fetching;
using GddWatch.Notices.Channels;
using GddWatch.Storage;
using GddWatch.Watching;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;

namespace GddWatch.Commands;

/// <summary>The hosted worker.</summary>
internal static class WatchCommand
{
    public static Command Create(CommonOptions common, Terminal terminal)
    {
        Option<bool> once = new("--once") { Description = "Makes one pass and exits, for a scheduler." };
        var command = new Command("watch", "The service: reads the weather every day, judges the windows and sends the mails, until it is stopped.") { once };
        command.SetAction((parsed, stop) => RunAsync(parsed.GetValue(common.Config)!, parsed.GetValue(common.Data)!, parsed.GetValue(once), terminal, stop));
        return command;
    }

    private static string Version => typeof(WatchCommand).Assembly.GetName().Version?.ToString(3) ?? "0";

    private static async Task<int> RunAsync(string config, string data, bool once, Terminal terminal, CancellationToken stop)
    {
        if (Workplace.Open(config, terminal) is not { } place) return ExitCode.WrongUsageOrConfiguration;
        if (Mailing.Open(config, data, place.Configuration, terminal) is not { } mailing) return ExitCode.WrongUsageOrConfiguration;
        if (Keeping.Find(config, data, terminal) is not { } keeping) return ExitCode.WrongUsageOrConfiguration;
        // Opened before the host starts: .NET 10 runs the whole of a background service in the background.
        await using Database database = await keeping.OpenAsync(stop);
        await using IDeliveryChannel channel = mailing.OpenChannel(terminal.Clock);
        DeliveryRules rules = mailing.RulesFor(place.Region);
        var delivery = new DeliveryPass(new Outbox(database), mailing.Composer, channel, rules, place.Zone, new Random().NextDouble);
        await using var seat = new JudgingSeat(database);
        var store = new WeatherStore(database);
        using WeatherServices services = WeatherServices.Create(new ServiceClient(place.Region.OperatorAddress, Version), terminal.Clock);
        var intake = new WeatherIntake(place, new ServiceFetch(place.Configuration, services, store), store);
        HostApplicationBuilder builder = Host.CreateEmptyApplicationBuilder(new HostApplicationBuilderSettings { ApplicationName = "gddwatch" });
        builder.Logging.AddConsole(options => options.LogToStandardErrorThreshold = LogLevel.Trace);
        builder.Logging.AddSimpleConsole(options => options.SingleLine = true);
        builder.Logging.SetMinimumLevel(LogLevel.Information);
        // The host's own chatter is not for an adviser; what goes wrong in it is.
        builder.Logging.AddFilter("Microsoft", LogLevel.Warning);
        var outcome = new WorkerOutcome();
        builder.Services.AddSingleton<IHostedService>(services => new Worker(
            place, intake, new JournalStore(database).LoadAsync, new DailyPass(place.Configuration, database, mailing.Bulletin, rules, new CalendarFolder(DataFolder.Calendar(data))), delivery, seat, new WorkerPlan(mailing.PassAt, place.Region.TimeZone, once), terminal.Clock, outcome,
            services.GetRequiredService<IHostApplicationLifetime>(), services.GetRequiredService<ILogger<Worker>>()));
        using IHost host = builder.Build();
        await host.RunAsync(stop);
        // A background service that fails stops the host with exit code 0 in .NET 10, so the outcome is carried beside it.
        return outcome.Failed ? ExitCode.Failed : ExitCode.Done;
    }
}
