using GddWatch.Agronomy.Journal;
using GddWatch.Commands;
using GddWatch.Feeds.Gathering;
using GddWatch.Storage;
using GddWatch.Watching.Health;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Logging;

namespace GddWatch.Watching;

/// <summary>The service: a daily pass at its time of day, one at once when it starts, and delivery in between.</summary>
internal sealed class Worker(
    Workplace place, WeatherIntake intake, Func<CancellationToken, Task<IReadOnlyDictionary<string, SiteJournal>>> journals, DailyPass daily, DeliveryPass delivery, Outbox outbox, JudgingSeat seat, WorkerPlan plan, TimeProvider clock, WorkerOutcome outcome,
    Pulse pulse, WatchMeters meters, Action checkGround, IHostApplicationLifetime lifetime, ILogger<Worker> log) : BackgroundService
{
    /// <summary>Longer than any message waits: a bulletin waits for less than a day, a refused one for hours.</summary>
    private static readonly TimeSpan LongestWait = TimeSpan.FromDays(8);

    private readonly PassSchedule schedule = new(plan);
    private DateTimeOffset latest;

    // Whether this service is the one that judges; on a server others may share the work.
    private bool judges;

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        try
        {
            latest = clock.GetUtcNow();
            await EndImpossibleWaitsAsync(stoppingToken);
            await PassAsync(stoppingToken);
            if (plan.Once) lifetime.StopApplication();
            else await KeepPassingAsync(stoppingToken);
        }
        catch (OperationCanceledException) when (stoppingToken.IsCancellationRequested)
        {
            // Who asked for one pass did not get it; a service that is stopped has done its work so far.
            if (plan.Once) outcome.Failed = true;
            if (plan.Once) log.StoppedEarly();
            else log.Stopped();
        }
        catch (Exception failure)
        {
            outcome.Failed = true;
            pulse.PassFailed(failure.Message);
            log.Failed(failure.Message);
            lifetime.StopApplication();
        }
    }

    private async Task KeepPassingAsync(CancellationToken stop)
    {
        TellNextPass();
        while (true)
        {
            await Task.Delay(WorkerPlan.DeliveryEvery, clock, stop);
            checkGround();
            try
            {
                if (await ClockWentBackAsync(stop)) TellNextPass();
                // A seat that has come free is taken at once, with a pass: whoever had it may have ended in the middle of one.
                if (!schedule.IsDue(clock.GetUtcNow()) && (judges || !await seat.TakeAsync(stop)))
                {
                    await DeliverAsync(stop);
                    continue;
                }

                await PassAsync(stop);
                TellNextPass();
            }
            catch (StorageException fault) when (fault.MayPass)
            {
                log.WaitsForDatabase(fault.Message);
            }
        }
    }

    private void TellNextPass()
    {
        DateTimeOffset next = plan.NextPassAfter(clock.GetUtcNow());
        pulse.NextPassAt(next);
        log.NextPass(next);
    }

    private async Task<bool> ClockWentBackAsync(CancellationToken stop)
    {
        DateTimeOffset before = latest;
        latest = clock.GetUtcNow();
        if (latest >= before) return false;
        log.ClockWentBack(TimeZoneInfo.ConvertTime(before, place.Zone), TimeZoneInfo.ConvertTime(latest, place.Zone));
        await EndImpossibleWaitsAsync(stop);
        return true;
    }

    private async Task EndImpossibleWaitsAsync(CancellationToken stop)
    {
        int ended = await outbox.EndImpossibleWaitsAsync(clock.GetUtcNow(), LongestWait, stop);
        if (ended > 0) log.WaitsEnded(ended);
    }

    private async Task PassAsync(CancellationToken stop)
    {
        using System.Diagnostics.Activity? span = Spans.Pass();
        judges = await seat.TakeAsync(stop);
        if (!judges)
        {
            log.JudgedElsewhere();
            schedule.Made(clock.GetUtcNow());
            pulse.JudgedElsewhere();
            await DeliverAsync(stop);
            return;
        }

        pulse.PassBegun();
        DateTimeOffset begunAt = clock.GetUtcNow();
        long begun = clock.GetTimestamp();
        IReadOnlyList<SiteWeather> weather;
        using (Spans.Fetch()) weather = await intake.TakeAsync(clock.GetUtcNow(), stop);
        place.Report(weather);
        PassReport report;
        using (Spans.Judge()) report = await daily.RunAsync(weather, await journals(stop), place.Today, place.TodayAt, clock.GetUtcNow(), stop);
        // Only now: a pass that a lost database ended is made again.
        schedule.Made(begunAt);
        pulse.PassMade(report);
        meters.PassMade(report, clock.GetElapsedTime(begun));
        log.Judged(report.Day, report.Windows.Count, report.MessagesQueued);
        foreach (string failure in report.Failures) log.SiteFailed(failure);
        if (report.Failures.Count > 0 && plan.Once) outcome.Failed = true;
        await DeliverAsync(stop);
    }

    private async Task DeliverAsync(CancellationToken stop)
    {
        using System.Diagnostics.Activity? span = Spans.Deliver();
        DeliveryReport report = await delivery.RunAsync(clock.GetUtcNow, stop);
        pulse.Delivered(report);
        meters.Delivered(report);
        if (report.Delivered > 0) log.Delivered(report.Delivered);
        foreach (string loss in report.Losses) log.RefusedForGood(loss);
        foreach (string trouble in report.Troubles) log.NotDelivered(trouble);
        if (report is { Waiting: > 0, OldestWaiting: { } since }) log.Waiting(report.Waiting, TimeZoneInfo.ConvertTime(since, place.Zone));
        if ((report.Losses.Count > 0 || report.Troubles.Count > 0 || report.Waiting > 0) && plan.Once) outcome.Failed = true;
    }
}
