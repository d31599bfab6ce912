using OpenTelemetry;
using OpenTelemetry.Metrics;
using OpenTelemetry.Resources;
using OpenTelemetry.Trace;

namespace GddWatch.Watching.Health;

/// <summary>
/// Where metrics and traces go: to whoever asks the loopback port, where there is one, and to the collector that the standard variable of OpenTelemetry names,
/// where it is set. Nowhere otherwise.
/// </summary>
internal sealed class Telemetry : IDisposable
{
    /// <summary>The standard variable (OpenTelemetry specification, OTLP exporter configuration) that names a collector; its siblings are honoured too.</summary>
    private const string Collector = "OTEL_EXPORTER_OTLP_ENDPOINT";

    /// <summary>How long a collector may take to receive the last of it when the service stops.</summary>
    private const int LastWordsMilliseconds = 1000;

    private readonly TracerProvider? tracer;

    private Telemetry(MeterProvider? meters, TracerProvider? tracer)
    {
        Meters = meters;
        this.tracer = tracer;
    }

    /// <summary>What the loopback port asks for metrics; null where nothing is gathered.</summary>
    public MeterProvider? Meters { get; }

    public static Telemetry Open(bool forPort, string version)
    {
        bool forCollector = !string.IsNullOrEmpty(Environment.GetEnvironmentVariable(Collector));
        if (!forPort && !forCollector) return new Telemetry(null, null);
        MeterProviderBuilder meters = Sdk.CreateMeterProviderBuilder().ConfigureResource(Describe).AddMeter(WatchMeters.Name);
        if (forPort) meters.AddPrometheusExporter();
        if (!forCollector) return new Telemetry(meters.Build(), null);
        TracerProvider traces = Sdk.CreateTracerProviderBuilder().ConfigureResource(Describe).AddSource(Spans.Name).AddOtlpExporter().Build();
        return new Telemetry(meters.AddOtlpExporter().Build(), traces);

        void Describe(ResourceBuilder resource) => resource.AddService("gddwatch", serviceVersion: version);
    }

    public void Dispose()
    {
        // Asked to end first: by itself each of them would wait for five seconds for a collector that does not answer.
        tracer?.Shutdown(LastWordsMilliseconds);
        Meters?.Shutdown(LastWordsMilliseconds);
        tracer?.Dispose();
        Meters?.Dispose();
    }
}
