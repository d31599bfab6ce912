using System.Globalization;
using System.Net;
using System.Text.Json;
using GddWatch.Feeds.Faults;
using GddWatch.Feeds.Services.Fetching;

namespace GddWatch.Feeds.Services.DailySummaries;

/// <summary>The dataset daily-summaries of NCEI's Access Data Service: several stations in one request; if the service refuses it, each alone. It has no forecast.</summary>
internal sealed class DailySummariesSource(Fetcher fetcher) : IServiceSource
{
    private const int StationsAtOnce = 50;
    private const int StationDaysAtOnce = 20_000;

    public ServiceKind Kind => ServiceKind.NoaaDailySummaries;

    public async Task<IReadOnlyList<ServiceReading>> FetchAsync(IReadOnlyList<ServiceRequest> requests, CancellationToken stop)
    {
        Asked[] all = [.. requests.Select(request => new Asked(request, new DailySummariesReply(SourceOf(request), request)))];
        IEnumerable<Asked[]> batches = all
            .Where(each => each.Request.From < each.Request.Today)
            .GroupBy(each => (each.Request.Feed.BaseAddress, each.Request.From, each.Request.Today))
            .SelectMany(group => group.Chunk(Math.Clamp(StationDaysAtOnce / (group.Key.Today.DayNumber - group.Key.From.DayNumber), 1, StationsAtOnce)));
        await Parallel.ForEachAsync(batches, new ParallelOptions { CancellationToken = stop, MaxDegreeOfParallelism = fetcher.Limits.AtOnce }, async (batch, token) => await AskAsync(batch, token));
        return [.. all.Select(each => each.Reply.Reading())];
    }

    private static Uri PathOf(ServiceRequest request) => new(request.Feed.BaseAddress, "access/services/data/v1");

    private static string SourceOf(ServiceRequest request) => $"noaa-daily-summaries at {PathOf(request)}";

    private async Task AskAsync(Asked[] batch, CancellationToken stop)
    {
        string source = SourceOf(batch[0].Request);
        FetchedReply reply = await fetcher.GetAsync(source, AddressOf(batch), stop);
        if (reply.Status == HttpStatusCode.BadRequest && batch.Length > 1)
        {
            foreach (Asked each in batch) await AskAsync([each], stop);
            return;
        }

        if (reply.Fault is { } fault)
        {
            foreach (Asked each in batch) each.Reply.Add(fault);
            return;
        }

        FaultList common = new();
        using JsonDocument? document = ReplyJson.Parse(source, reply.Body, common);
        if (document is { RootElement.ValueKind: not JsonValueKind.Array })
        {
            common.Add(FaultKind.Reply, ReplyFaults.NotAsDocumented(source, "it is not a list of days.", document.RootElement.Shown(), "a list."));
        }

        if (!common.IsEmpty) fetcher.Forget(reply);
        foreach (Fault each in common.Told(refusalsAreLeftOut: false))
        {
            foreach (Asked asked in batch) asked.Reply.Add(each);
        }

        if (document is { RootElement.ValueKind: JsonValueKind.Array }) Share(document.RootElement, batch);
    }

    private static void Share(JsonElement rows, Asked[] batch)
    {
        ILookup<string?, Asked> stations = batch.ToLookup(each => each.Request.Feed.Station, StringComparer.OrdinalIgnoreCase);
        int number = 0;
        foreach (JsonElement row in rows.EnumerateArray())
        {
            number++;
            foreach (Asked asked in stations[row.Text("STATION")?.Trim() ?? ""]) asked.Reply.AddRow(row, number);
        }
    }

    private static Uri AddressOf(Asked[] batch)
    {
        ServiceRequest any = batch[0].Request;
        string stations = string.Join(',', batch.Select(each => Uri.EscapeDataString(each.Request.Feed.Station ?? "")).Distinct());
        string days = string.Create(CultureInfo.InvariantCulture, $"startDate={any.From:yyyy-MM-dd}&endDate={any.Today.AddDays(-1):yyyy-MM-dd}");
        return new Uri(PathOf(any), $"?dataset=daily-summaries&stations={stations}&{days}&dataTypes=TMAX,TMIN,TAVG,PRCP,SNWD&format=json&units=metric&includeAttributes=true&includeStationLocation=1");
    }

    private sealed record Asked(ServiceRequest Request, DailySummariesReply Reply);
}
