using GddWatch.Agronomy.Changes;
using GddWatch.Agronomy.Journal;
using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Treatments;
using GddWatch.Agronomy.Windows;
using GddWatch.Commands;
using GddWatch.Configuration.Settings;
using GddWatch.Feeds.Gathering;
using GddWatch.Notices.Channels;
using GddWatch.Storage;

namespace GddWatch.Watching;

/// <summary>The two passes of the worker, with a date that moves through the past.</summary>
internal sealed class Replay(Workplace place, BulletinTime? bulletinTime, IReadOnlyDictionary<string, SiteJournal> journals, Database database, DeliveryPass delivery, CalendarFolder calendars)
{
    /// <summary>The hour of the evening at which a replayed day's weather is complete and its mails are dated.</summary>
    private static readonly TimeOnly Evening = new(20, 0);

    /// <summary>Lives through the days that were not lived through yet.</summary>
    /// <returns>What went wrong, a sentence each.</returns>
    public async Task<IReadOnlyList<string>> RunAsync(IReadOnlyList<SiteWeather> weather, DateSpan range, Action<DateOnly> progress, CancellationToken stop)
    {
        var troubles = new List<string>();
        var pass = new DailyPass(place.Configuration, database, bulletinTime, RulesOf(place.Region));
        DateOnly? lived = await ReplayFolder.LivedThroughAsync(database, stop);
        for (DateOnly day = lived is { } last ? last.AddDays(1) : range.First; day <= range.Last; day = day.AddDays(1))
        {
            DateOnly today = day;
            PassReport report = await pass.RunAsync([.. weather.Select(site => site.Until(today))], journals, day, _ => today, InstantOf(day), stop);
            troubles.AddRange(report.Failures);
            troubles.AddRange(await DeliverAsync(InstantOf(today), stop));
            progress(day);
        }

        // What an earlier run queued and did not come to deliver; its claims have run out a day later.
        troubles.AddRange(await DeliverAsync(InstantOf(range.Last.AddDays(1)), stop));
        troubles.AddRange(await WriteCalendarsAsync(weather, range.Last, stop));
        return troubles;
    }

    /// <summary>The calendars as the last day left them: a service writes them after each pass, but nobody reads those of past days.</summary>
    private async Task<IReadOnlyList<string>> WriteCalendarsAsync(IReadOnlyList<SiteWeather> weather, DateOnly day, CancellationToken stop)
    {
        var windows = new List<(string, IReadOnlyList<Notice>)>();
        foreach (SiteWeather site in weather)
        {
            var judging = SiteJudging.Judge(place.Configuration.Treatments, site.Until(day), journals.GetValueOrDefault(site.Site.Id, SiteJournal.Empty), day);
            if (CalendarPass.Of(judging, place.Region) is { } known) windows.Add((site.Site.Id, known));
        }

        ToldNotices told = await new ToldStore(database).LoadAsync(stop);
        CalendarSheets sheets = CalendarPass.Prepare(calendars, place.Region, windows, new Tellings(told.All.Select(each => (each.Key, each.Day)), []), stop);
        return await calendars.WriteAsync(sheets, InstantOf(day), stop) is { } trouble ? [.. sheets.Failures, trouble] : sheets.Failures;
    }

    /// <summary>The rules of a replay: all of a day's mails are written in its evening, whenever their readers want to be left in peace.</summary>
    public static DeliveryRules RulesOf(Region region) => new(region with { Recipients = [.. region.Recipients.Select(each => each with { Quiet = null })] }, TimeSpan.FromDays(3));

    private async Task<IEnumerable<string>> DeliverAsync(DateTimeOffset at, CancellationToken stop)
    {
        DeliveryReport report = await delivery.RunAsync(() => at, stop);
        return report.Losses.Concat(report.Troubles);
    }

    /// <summary>The windows whose season touches the range, as they stood on its last day.</summary>
    public IReadOnlyList<Window> Summarise(IReadOnlyList<SiteWeather> weather, DateSpan range)
    {
        var windows = new List<Window>();
        foreach (SiteWeather site in weather)
        {
            if (site.AsOf(range.Last) is not { } known) continue;
            SiteMetrics metrics = SiteJudging.MetricsOf(place.Configuration.Treatments, known, site.Site, journals.GetValueOrDefault(site.Site.Id, SiteJournal.Empty).Until(range.Last));
            foreach (Treatment treatment in place.Configuration.Treatments.Where(treatment => treatment.IsFor(site.Site)))
            {
                Season season = treatment.Season.AtOrAfter(range.First, site.Site.Hemisphere);
                for (; season.Span.First <= range.Last; season = treatment.Season.BeginningIn(season.Year + 1, site.Site.Hemisphere))
                {
                    windows.Add(WindowJudge.JudgeSeason(treatment, metrics, season, range.Last));
                }
            }
        }

        return windows;
    }

    private DateTimeOffset InstantOf(DateOnly day)
    {
        DateTime local = day.ToDateTime(Evening);
        return new DateTimeOffset(local, place.Zone.GetUtcOffset(local));
    }
}
