using GddWatch.Agronomy.Journal;
using GddWatch.Commands;
using GddWatch.Feeds.Gathering;
using GddWatch.Storage;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;

namespace GddWatch.Watching;

/// <summary>The service: a daily pass at its time of day, one at once when it starts, and delivery in between.</summary>
internal sealed class Worker(
    Workplace place, WeatherIntake intake, Func<CancellationToken, Task<IReadOnlyDictionary<string, SiteJournal>>> journals, DailyPass daily, DeliveryPass delivery, JudgingSeat seat, WorkerPlan plan, TimeProvider clock, WorkerOutcome outcome,
    IHostApplicationLifetime lifetime, ILogger<Worker> log) : BackgroundService
{
    // Whether this service is the one that judges; on a server others may share the work.
    private bool judges;

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        try
        {
            await PassAsync(stoppingToken);
            if (plan.Once) lifetime.StopApplication();
            else await KeepPassingAsync(stoppingToken);
        }
        catch (OperationCanceledException) when (stoppingToken.IsCancellationRequested)
        {
            log.Stopped();
        }
        catch (Exception failure)
        {
            outcome.Failed = true;
            log.Failed(failure.Message);
            lifetime.StopApplication();
        }
    }

    private async Task KeepPassingAsync(CancellationToken stop)
    {
        DateTimeOffset next = plan.NextPassAfter(clock.GetUtcNow());
        log.NextPass(next);
        using var timer = new PeriodicTimer(WorkerPlan.DeliveryEvery, clock);
        while (await timer.WaitForNextTickAsync(stop))
        {
            try
            {
                // A seat that has come free is taken at once, with a pass: whoever had it may have ended in the middle of one.
                if (clock.GetUtcNow() < next && (judges || !await seat.TakeAsync(stop)))
                {
                    await DeliverAsync(stop);
                    continue;
                }

                await PassAsync(stop);
                next = plan.NextPassAfter(clock.GetUtcNow());
                log.NextPass(next);
            }
            catch (StorageException fault) when (fault.MayPass)
            {
                log.WaitsForDatabase(fault.Message);
            }
        }
    }

    private async Task PassAsync(CancellationToken stop)
    {
        judges = await seat.TakeAsync(stop);
        if (!judges)
        {
            log.JudgedElsewhere();
            await DeliverAsync(stop);
            return;
        }

        IReadOnlyList<SiteWeather> weather = await intake.TakeAsync(clock.GetUtcNow(), stop);
        place.Report(weather);
        PassReport report = await daily.RunAsync(weather, await journals(stop), place.Today, place.TodayAt, clock.GetUtcNow(), stop);
        log.Judged(report.Day, report.WindowsJudged, report.MessagesQueued);
        foreach (string failure in report.Failures) log.SiteFailed(failure);
        if (report.Failures.Count > 0 && plan.Once) outcome.Failed = true;
        await DeliverAsync(stop);
    }

    private async Task DeliverAsync(CancellationToken stop)
    {
        DeliveryReport report = await delivery.RunAsync(clock.GetUtcNow, stop);
        if (report.Delivered > 0) log.Delivered(report.Delivered);
        foreach (string loss in report.Losses) log.RefusedForGood(loss);
        foreach (string trouble in report.Troubles) log.NotDelivered(trouble);
        if (report is { Waiting: > 0, OldestWaiting: { } since }) log.Waiting(report.Waiting, since);
        if ((report.Losses.Count > 0 || report.Troubles.Count > 0 || report.Waiting > 0) && plan.Once) outcome.Failed = true;
    }
}
