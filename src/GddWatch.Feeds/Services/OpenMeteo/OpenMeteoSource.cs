using System.Globalization;
using System.Net;
using System.Text.Json;
using GddWatch.Agronomy.Weather;
using GddWatch.Feeds.Archives;
using GddWatch.Feeds.Faults;
using GddWatch.Feeds.Services.Fetching;

namespace GddWatch.Feeds.Services.OpenMeteo;

/// <summary>
/// Open-Meteo: the archive for the days that it has by now, the forecast with its last past days for those since, and for the days to come. Where both have a day the
/// archive's values stand. Several sites go into one request, their coordinates one after the other; if the service refuses such a request, each site is asked for alone.
/// </summary>
internal sealed class OpenMeteoSource(Fetcher fetcher) : IServiceSource
{
    // The archive is complete about five days later (SEEN); a day more is left to it.
    private const int ArchiveDelayDays = 6;
    private const int PastDays = 10;

    // 16 days are the most (SEEN).
    private const int ForecastDays = 16;
    private const int SitesAtOnce = 50;
    private const int SiteDaysAtOnce = 40_000;
    private static readonly Uri ArchiveAddress = new("https://archive-api.open-meteo.com/");

    public ServiceKind Kind => ServiceKind.OpenMeteo;

    public async Task<IReadOnlyList<ServiceReading>> FetchAsync(IReadOnlyList<ServiceRequest> requests, CancellationToken stop)
    {
        SiteAsked[] all = [.. requests.Select(request => new SiteAsked(request))];
        // The archive goes first: what it gives stands.
        await AskAsync([.. all.Where(each => each.Request.From <= ArchiveUntil(each.Request)).Select(each => new Part(each, each.Request.From, ArchiveUntil(each.Request), IsArchive: true))], stop);
        await AskAsync([.. all.Select(each => new Part(each, each.Request.Today.AddDays(-PastDaysOf(each.Request)), each.Request.Today.AddDays(ForecastDays - 1), IsArchive: false))], stop);
        return [.. all.Select(each => each.Reading(fetcher.Now))];
    }

    private static DateOnly ArchiveUntil(ServiceRequest request) => request.Today.AddDays(-ArchiveDelayDays);

    private static int PastDaysOf(ServiceRequest request) => Math.Clamp(request.Today.DayNumber - request.From.DayNumber, 0, PastDays);

    private async Task AskAsync(Part[] parts, CancellationToken stop)
    {
        IEnumerable<Part[]> batches = parts
            .GroupBy(part => (part.Asked.Request.Feed.BaseAddress, part.Asked.Request.Site.TimeZone, part.First, part.Last))
            .SelectMany(group => group.Chunk(Math.Clamp(SiteDaysAtOnce / (group.Key.Last.DayNumber - group.Key.First.DayNumber + 1), 1, SitesAtOnce)));
        await Parallel.ForEachAsync(batches, new ParallelOptions { CancellationToken = stop, MaxDegreeOfParallelism = fetcher.Limits.AtOnce }, async (batch, token) => await AskBatchAsync(batch, token));
    }

    private async Task AskBatchAsync(Part[] batch, CancellationToken stop)
    {
        Uri address = AddressOf(batch);
        string source = $"open-meteo at {address.GetLeftPart(UriPartial.Path)}";
        FetchedReply reply = await fetcher.GetAsync(source, address, stop);
        if (reply.Status == HttpStatusCode.BadRequest && batch.Length > 1)
        {
            foreach (Part part in batch) await AskBatchAsync([part], stop);
            return;
        }

        if (reply.Fault is { } fault)
        {
            foreach (Part part in batch) part.Asked.Faults.Add(FaultKind.Reply, fault);
            return;
        }

        FaultList common = new();
        using JsonDocument? document = ReplyJson.Parse(source, reply.Body, common);
        JsonElement[] places = document is null ? [] : Places(document.RootElement);
        if (document is not null && places.Length != batch.Length)
        {
            common.Add(FaultKind.Reply, ReplyFaults.NotAsDocumented(source, $"it is for {places.Length} places.", null, $"a list for the {batch.Length} places that were asked for."));
        }

        if (!common.IsEmpty) fetcher.Forget(reply);
        foreach ((int index, Part part) in batch.Index())
        {
            part.Asked.Faults.AddAll(common);
            if (common.IsEmpty) part.Asked.Position = OpenMeteoReply.Read(source, places[index], part.Asked.Request.Site, part.First, part.Last, part.Asked.Days, part.Asked.Faults) ?? part.Asked.Position;
        }
    }

    private static JsonElement[] Places(JsonElement root) => root.ValueKind == JsonValueKind.Array ? [.. root.EnumerateArray()] : [root];

    private static Uri AddressOf(Part[] batch)
    {
        ServiceRequest any = batch[0].Asked.Request;
        // The service's own archive has a host of its own; another host has both.
        Uri host = batch[0].IsArchive && any.Feed.BaseAddress == ServiceFacts.DefaultAddress(ServiceKind.OpenMeteo) ? ArchiveAddress : any.Feed.BaseAddress;
        string times = batch[0].IsArchive
            ? string.Create(CultureInfo.InvariantCulture, $"start_date={batch[0].First:yyyy-MM-dd}&end_date={batch[0].Last:yyyy-MM-dd}")
            : $"past_days={any.Today.DayNumber - batch[0].First.DayNumber}&forecast_days={ForecastDays}";
        string query = $"latitude={List(batch, request => request.Site.Latitude)}&longitude={List(batch, request => request.Site.Longitude)}"
            + $"&elevation={List(batch, request => request.Site.ElevationM)}&daily={OpenMeteoVariable.Names}&timezone={Uri.EscapeDataString(any.Site.TimeZone)}&{times}"
            + "&temperature_unit=celsius&precipitation_unit=mm&timeformat=iso8601";
        return new Uri(host, $"v1/{(batch[0].IsArchive ? "archive" : "forecast")}?{query}");
    }

    private static string List(Part[] batch, Func<ServiceRequest, double> value) =>
        string.Join(',', batch.Select(part => value(part.Asked.Request).ToString("0.####", CultureInfo.InvariantCulture)));

    private sealed record Part(SiteAsked Asked, DateOnly First, DateOnly Last, bool IsArchive);

    private sealed class SiteAsked
    {
        public SiteAsked(ServiceRequest request)
        {
            Request = request;
            Days = new ServiceDays(Faults);
        }

        public ServiceRequest Request { get; }

        public FaultList Faults { get; } = new();

        public ServiceDays Days { get; }

        public StationPosition? Position { get; set; }

        public ServiceReading Reading(DateTimeOffset now)
        {
            Days.LeaveOutContradictions();
            DailySeries? observed = Days.Before(Request.Today);
            Forecast? forecast = Days.From(Request.Today, now);
            if (!Faults.HasRefusal)
            {
                if (observed is null && Request.From < Request.Today) Faults.Add(FaultKind.Reply, ReplyFaults.NoDays("open-meteo", $"The service knows no day from {DayText.Of(Request.From)} on."));
                if (forecast is null) Faults.Add(FaultKind.Reply, ReplyFaults.NoDays("open-meteo", $"The forecast has no day from {DayText.Of(Request.Today)} on."));
            }

            if (observed is not null) Faults.Add(FaultKind.Reply, IsModelOutput(observed));
            return new ServiceReading(Request, observed, forecast, Position, Faults.Told(refusalsAreLeftOut: false));
        }

        private static Fault IsModelOutput(DailySeries days) => new()
        {
            Severity = FaultSeverity.Remark,
            File = "open-meteo",
            Problem = $"The days before today, {DayText.Of(days.FirstDay)} to {DayText.Of(days.LastDay)}, are computed by weather models for the place, not measured there.",
            Accepted = "this where no station is near; else put a feed of measured days before this one.",
        };
    }
}
