using System.Collections.Concurrent;
using System.Globalization;
using System.Net;
using System.Text.Json;
using GddWatch.Agronomy.Weather;
using GddWatch.Feeds.Archives;
using GddWatch.Feeds.Faults;
using GddWatch.Feeds.Services.Fetching;

namespace GddWatch.Feeds.Services.UsWeather;

/// <summary>The gridded forecast of the US National Weather Service: no observed days, and the United States alone. Which grid cell a point lies in is asked once.</summary>
internal sealed class UsWeatherSource(Fetcher fetcher) : IServiceSource
{
    private readonly ConcurrentDictionary<Uri, GridCell> cells = [];

    public ServiceKind Kind => ServiceKind.UsWeatherService;

    public async Task<IReadOnlyList<ServiceReading>> FetchAsync(IReadOnlyList<ServiceRequest> requests, CancellationToken stop)
    {
        var readings = new ServiceReading[requests.Count];
        await Parallel.ForAsync(0, requests.Count, new ParallelOptions { CancellationToken = stop, MaxDegreeOfParallelism = fetcher.Limits.AtOnce }, async (i, token) =>
            readings[i] = await FetchAsync(requests[i], token));
        return readings;
    }

    private async Task<ServiceReading> FetchAsync(ServiceRequest request, CancellationToken stop)
    {
        FaultList faults = new();
        ServiceDays days = new(faults);
        StationPosition? position = null;
        if (await CellOfAsync(request, faults, stop) is { } cell)
        {
            Uri address = new(request.Feed.BaseAddress, cell.Path);
            string source = $"us-weather-service at {address}";
            FetchedReply reply = await fetcher.GetAsync(source, address, stop);
            if (reply.Fault is { } fault)
            {
                faults.Add(FaultKind.Reply, fault);
                // Offices redraw their grids: the point is asked again next time.
                if (reply.Status == HttpStatusCode.NotFound) cells.TryRemove(PointOf(request), out _);
            }
            else
            {
                position = Read(source, reply, cell, request, days, faults);
            }
        }

        days.LeaveOutContradictions();
        Forecast? forecast = days.From(request.Today, fetcher.Now);
        if (forecast is null && !faults.HasRefusal) faults.Add(FaultKind.Reply, ReplyFaults.NoDays($"us-weather-service at {PointOf(request)}", $"The forecast has no whole day from {DayText.Of(request.Today)} on."));
        return new ServiceReading(request, null, forecast, position, faults.Told(refusalsAreLeftOut: false));
    }

    private StationPosition? Read(string source, FetchedReply reply, GridCell cell, ServiceRequest request, ServiceDays days, FaultList faults)
    {
        using JsonDocument? document = ReplyJson.Parse(source, reply.Body, faults);
        if (document is null || !cell.IsOf(document.RootElement)) fetcher.Forget(reply);
        if (document is null) return null;
        if (!cell.IsOf(document.RootElement))
        {
            faults.Add(FaultKind.Reply, ReplyFaults.NotAsDocumented(source, "it is not about the grid cell that was asked for.", document.RootElement.Shown(), $"the cell {cell.Office} {cell.X},{cell.Y}."));
            return null;
        }

        return new GridForecastReply(source, request.Site, request.Today, fetcher.Now, days, faults).Read(document.RootElement);
    }

    private async Task<GridCell?> CellOfAsync(ServiceRequest request, FaultList faults, CancellationToken stop)
    {
        Uri point = PointOf(request);
        if (cells.TryGetValue(point, out GridCell? known)) return known;
        string source = $"us-weather-service at {point}";
        FetchedReply reply = await fetcher.GetAsync(source, point, stop);
        if (reply.Fault is { } fault)
        {
            faults.Add(FaultKind.Reply, reply.Status == HttpStatusCode.NotFound ? OutsideTheStates(source) : fault);
            return null;
        }

        using JsonDocument? document = ReplyJson.Parse(source, reply.Body, faults);
        if (document is not null && GridCell.Of(document.RootElement) is { } cell) return cells[point] = cell;
        fetcher.Forget(reply);
        if (document is null) return null;
        faults.Add(FaultKind.Reply, ReplyFaults.NotAsDocumented(source, "it names no grid cell.", document.RootElement.Shown(), "gridId, gridX and gridY."));
        return null;
    }

    // Four decimals, about 10 m, are what the service takes (MEMORY).
    private static Uri PointOf(ServiceRequest request) =>
        new(request.Feed.BaseAddress, string.Create(CultureInfo.InvariantCulture, $"points/{request.Site.Latitude:0.####},{request.Site.Longitude:0.####}"));

    private static Fault OutsideTheStates(string source) => ReplyFaults.Refused(
        source, "The service has no forecast for this place.", "HTTP 404", "a place in the United States; elsewhere service: open-meteo, and look at the site's latitude and longitude, west being negative.");
}
