using System.Collections.Concurrent;
using System.Net;
using System.Net.NetworkInformation;
using System.Net.Sockets;
using System.Text;
using System.Text.RegularExpressions;
using GddWatch.Tests.Commands;
using GddWatch.Tests.Loopback;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Http;
using Xunit;

namespace GddWatch.Tests.Crash;

/// <summary>The real process as systemd starts it, with its port, beside other commands, a second worker started by mistake, and a collector of metrics and traces.</summary>
public sealed partial class RunningServiceTests
{
    private static readonly DateOnly Day = new(2025, 4, 25);
    private static readonly DateTimeOffset Noon = new(2025, 4, 25, 17, 0, 0, TimeSpan.Zero);

    private static CancellationToken Cancel => TestContext.Current.CancellationToken;

    [Fact]
    public async Task It_tells_systemd_answers_on_its_port_keeps_a_second_one_off_and_leaves_the_folder_to_its_owner()
    {
        if (!OperatingSystem.IsLinux()) Assert.Skip("systemd is there on Linux alone.");
        using Workshop workshop = Workshop.WithOneLawn(SmoothWeather.Csv(new DateOnly(2024, 1, 1), Day));
        int port = LoopbackMailServer.FreePort();
        using var systemd = new Socket(AddressFamily.Unix, SocketType.Dgram, ProtocolType.Unspecified);
        string notify = Path.Combine(workshop.Folder, "notify");
        systemd.Bind(new UnixDomainSocketEndPoint(notify));
        await using Collector collector = await Collector.StartAsync();
        var environment = new Dictionary<string, string>
        {
            ["NOTIFY_SOCKET"] = notify,
            ["Health__Port"] = $"{port}",
            ["OTEL_EXPORTER_OTLP_ENDPOINT"] = $"http://127.0.0.1:{collector.Port}",
            ["OTEL_EXPORTER_OTLP_PROTOCOL"] = "http/protobuf",
        };
        using ProgramProcess service = ProgramProcess.StartBySystemd(workshop, Noon, environment, "watch");
        Assert.Contains("READY=1", await HearAsync(systemd), StringComparison.Ordinal);
        await service.HearsAsync("The next daily pass is on Saturday 26 April 2025 06:00 -05:00.");

        // The port.
        using var client = new HttpClient { BaseAddress = new Uri($"http://127.0.0.1:{port}") };
        Assert.Equal("""{"status":"well","words":"The service is running."}""", await client.GetStringAsync("/health/live", Cancel));
        Assert.Contains("\"status\":\"well\"", await client.GetStringAsync("/health/ready", Cancel), StringComparison.Ordinal);
        string metrics = await client.GetStringAsync("/metrics", Cancel);
        Assert.Matches("(?m)^gddwatch_feed_age_days\\{.*site=\"lawn\".*\\} 0$", metrics);
        Assert.Matches("(?m)^gddwatch_windows\\{.*state=\"open\".*\\} [1-9]", metrics);
        Assert.Matches("(?m)^gddwatch_notices_queued_total.* 1$", metrics);
        Assert.Matches("(?m)^gddwatch_notices_sent_total.* 1$", metrics);
        Assert.Matches("(?m)^gddwatch_notices_failed_total.* 0$", metrics);
        Assert.Matches("(?m)^gddwatch_notices_oldest_waiting_seconds.* 0$", metrics);
        Assert.Matches("(?m)^gddwatch_pass_duration_seconds_count.* 1$", metrics);
        Assert.All(IPGlobalProperties.GetIPGlobalProperties().GetActiveTcpListeners().Where(listener => listener.Port == port), listener => Assert.Equal(IPAddress.Loopback, listener.Address));

        // Beside it.
        workshop.PutClockTo(Noon);
        Ran second = await workshop.RunAsync("watch", "--once");
        Assert.Equal(1, second.Code);
        Assert.Matches("^Another worker \\(process [0-9]+, since Friday 25 April 2025 12:00:[0-9]{2} -05:00\\) is at work on the data folder ", second.Error);
        Assert.Equal(0, (await workshop.RunAsync("status")).Code);
        Assert.Equal(0, (await workshop.RunAsync("record", "mowing", "--site", "lawn", "--on", "2025-04-20")).Code);
        File.WriteAllText(Path.Combine(workshop.Config, "appsettings.json"), $$"""{ "Health": { "Port": "{{port}}" } }""");
        Ran health = await workshop.RunAsync("health");
        Assert.Equal((0, "The last pass was made at Friday 25 April 2025 12:00 -05:00; no message waits.\n"), (health.Code, health.Output));

        // The folder.
        foreach (string entry in Directory.EnumerateFileSystemEntries(workshop.Data, "*", SearchOption.AllDirectories).Prepend(workshop.Data))
        {
            if (OperatingSystem.IsWindows()) break;
            UnixFileMode others = File.GetUnixFileMode(entry) & ~(UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
            Assert.True(others == UnixFileMode.None, $"{entry} is open to others: {others}");
        }

        // The end.
        TimeSpan took = await service.TerminateAsync();
        Assert.True(took < TimeSpan.FromSeconds(10), $"It took {took.TotalSeconds:0.0} s.");
        Assert.Equal(0, service.ExitCode);
        Assert.Contains("STOPPING=1", await HearAsync(systemd), StringComparison.Ordinal);
        Assert.All(service.Lines, line => Assert.Matches(SystemdLine(), line));
        Assert.Contains("/v1/metrics", collector.Paths);
        string traces = collector.Received("/v1/traces");
        foreach (string span in (string[])["pass", "fetch", "judge", "deliver"]) Assert.Contains(span, traces, StringComparison.Ordinal);
        Ran gone = await workshop.RunAsync("health");
        Assert.Equal((1, $"No service answers on port {port} of this machine.\n"), (gone.Code, gone.Error));
    }

    [Fact]
    public async Task A_killed_one_leaves_no_lock_behind()
    {
        using Workshop workshop = Workshop.WithOneLawn(SmoothWeather.Csv(new DateOnly(2025, 1, 1), Day));
        using (ProgramProcess service = ProgramProcess.Start(workshop, Noon, "watch"))
        {
            await service.HearsAsync("The next daily pass");
            Assert.All(service.Lines, line => Assert.Matches(PlainLine(), line));
            service.Kill();
            await service.Ended.WaitAsync(Cancel);
        }

        workshop.PutClockTo(Noon);
        Ran next = await workshop.RunAsync("watch", "--once");
        Assert.True(next.Code == 0, next.Error);
    }

    [Fact]
    public async Task A_port_that_is_taken_is_said_and_nothing_is_begun()
    {
        using var taken = new TcpListener(IPAddress.Loopback, 0);
        taken.Start();
        int port = ((IPEndPoint)taken.LocalEndpoint).Port;
        using Workshop workshop = Workshop.WithOneLawn(SmoothWeather.Csv(new DateOnly(2025, 1, 1), Day));
        File.WriteAllText(Path.Combine(workshop.Config, "appsettings.json"), $$"""{ "Health": { "Port": "{{port}}" } }""");
        Ran ran = await workshop.RunAsync("watch", "--once");
        Assert.Equal(1, ran.Code);
        Assert.StartsWith($"The port {port} of this machine, on which the service would say how it is, cannot be used", ran.Error, StringComparison.Ordinal);
        Assert.Empty(workshop.Mails);
    }

    private static async Task<string> HearAsync(Socket systemd)
    {
        byte[] heard = new byte[1024];
        // Where nobody tells anything, that is a failure and not an endless wait.
        return Encoding.UTF8.GetString(heard, 0, await systemd.ReceiveAsync(heard, Cancel).AsTask().WaitAsync(TimeSpan.FromMinutes(2), Cancel));
    }

    [GeneratedRegex("^<[2346]>[A-Z]", RegexOptions.CultureInvariant, 1000)]
    private static partial Regex SystemdLine();

    [GeneratedRegex(@"^2025-04-25 12:00:\d\d -05:00  (?:warning: |error: )?[A-Z]", RegexOptions.CultureInvariant, 1000)]
    private static partial Regex PlainLine();

    /// <summary>A collector of this machine that takes whatever it is sent by OTLP over HTTP.</summary>
    private sealed class Collector(WebApplication server, ConcurrentQueue<(string Path, string Body)> all) : IAsyncDisposable
    {
        public int Port => new Uri(server.Urls.Single()).Port;

        public IReadOnlyList<string> Paths => [.. all.Select(each => each.Path)];

        public static async Task<Collector> StartAsync()
        {
            var all = new ConcurrentQueue<(string, string)>();
            WebApplicationBuilder builder = WebApplication.CreateEmptyBuilder(new WebApplicationOptions());
            builder.WebHost.UseKestrelCore().ConfigureKestrel(options => options.Listen(IPAddress.Loopback, 0));
            WebApplication server = builder.Build();
            server.Run(async context =>
            {
                using var body = new MemoryStream();
                await context.Request.Body.CopyToAsync(body, context.RequestAborted);
                all.Enqueue((context.Request.Path, Encoding.Latin1.GetString(body.ToArray())));
                context.Response.StatusCode = StatusCodes.Status200OK;
            });
            await server.StartAsync(Cancel);
            return new Collector(server, all);
        }

        public string Received(string path) => string.Concat(all.Where(each => each.Path == path).Select(each => each.Body));

        public ValueTask DisposeAsync() => server.DisposeAsync();
    }
}
