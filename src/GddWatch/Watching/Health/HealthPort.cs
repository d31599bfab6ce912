using System.Net;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;
using OpenTelemetry.Metrics;

namespace GddWatch.Watching.Health;

/// <summary>The port on which this machine, and no other, asks how the service is: /health/live, /health/ready and /metrics.</summary>
internal sealed class HealthPort : IAsyncDisposable
{
    private readonly WebApplication server;

    private HealthPort(WebApplication server) => this.server = server;

    /// <summary>Where a question about readiness goes.</summary>
    public static Uri Readiness(int port) => new($"http://127.0.0.1:{port}/health/ready");

    /// <summary>Begins to listen.</summary>
    /// <exception cref="IOException">The port is taken.</exception>
    public static async Task<HealthPort> OpenAsync(int port, Pulse pulse, MeterProvider meters, CancellationToken stop)
    {
        WebApplicationBuilder builder = WebApplication.CreateEmptyBuilder(new WebApplicationOptions { ApplicationName = "gddwatch" });
        builder.WebHost.UseKestrelCore().ConfigureKestrel(options =>
        {
            options.Listen(IPAddress.Loopback, port);
            options.AddServerHeader = false;
        });
        builder.Services.AddRoutingCore();
        builder.Logging.ClearProviders();
        // Nobody waits for an answer of this port when the service stops.
        builder.Services.Configure<HostOptions>(options => options.ShutdownTimeout = TimeSpan.FromSeconds(1));
        WebApplication listener = builder.Build();
        listener.MapGet("/health/live", context => AnswerAsync(context, new HealthReport(true, "The service is running.")));
        listener.MapGet("/health/ready", context => AnswerAsync(context, pulse.Readiness()));
        listener.UseOpenTelemetryPrometheusScrapingEndpoint(meters, context => context.Request.Path == "/metrics", null, null, null);
        try
        {
            await listener.StartAsync(stop);
            return new HealthPort(listener);
        }
        catch
        {
            await listener.DisposeAsync();
            throw;
        }
    }

    public async ValueTask DisposeAsync()
    {
        await server.StopAsync(CancellationToken.None);
        await server.DisposeAsync();
    }

    private static Task AnswerAsync(HttpContext context, HealthReport report)
    {
        context.Response.StatusCode = report.IsWell ? StatusCodes.Status200OK : StatusCodes.Status503ServiceUnavailable;
        context.Response.Headers.CacheControl = "no-store";
        return context.Response.WriteAsJsonAsync(new { status = report.IsWell ? "well" : "unwell", words = report.Words }, context.RequestAborted);
    }
}
