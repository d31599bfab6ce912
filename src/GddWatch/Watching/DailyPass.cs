using System.Collections.Concurrent;
using GddWatch.Agronomy.Changes;
using GddWatch.Agronomy.Journal;
using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Treatments;
using GddWatch.Agronomy.Windows;
using GddWatch.Configuration;
using GddWatch.Configuration.Settings;
using GddWatch.Feeds.Gathering;
using GddWatch.Notices.Channels;
using GddWatch.Storage;

namespace GddWatch.Watching;

/// <summary>
/// One day's judging of all sites: judge, compare with what was told, queue. The windows and the queued messages are kept in one transaction; delivery
/// is another pass that reads the queue alone.
/// </summary>
internal sealed class DailyPass(WatchConfiguration configuration, Database database, BulletinTime? bulletinTime, DeliveryRules rules, CalendarFolder? calendars = null)
{
    /// <summary>The name under which the troubles that the operator was last told of are kept.</summary>
    private const string TroublesTold = "feed-troubles-told";

    /// <summary>The name under which the day of the last bulletin is kept.</summary>
    private const string LastBulletin = "last-bulletin";

    // Of each site, from one pass to the next.
    private readonly ConcurrentDictionary<string, SiteMemory> memories = new(StringComparer.Ordinal);
    private readonly WindowStore windows = new(database);
    private readonly ToldStore toldStore = new(database);
    private readonly RegionValues regionValues = new(database);
    private readonly PassStore passes = new(database);

    /// <summary>Judges the sites as of a day, from weather in which later days are hidden.</summary>
    /// <param name="weather">The weather of the sites.</param>
    /// <param name="journals">What was recorded, by the sites' ids; later entries are hidden here.</param>
    /// <param name="day">The day in the region's calendar.</param>
    /// <param name="dayAt">The day in a site's own calendar.</param>
    /// <param name="at">The instant of the pass; in a replay, the replayed one.</param>
    /// <param name="stop">Stops the pass; nothing of it is kept then, unless all of it was and only calendars were still to be written: the next pass makes up for those.</param>
    public async Task<PassReport> RunAsync(
        IReadOnlyList<SiteWeather> weather, IReadOnlyDictionary<string, SiteJournal> journals, DateOnly day, Func<Site, DateOnly> dayAt, DateTimeOffset at, CancellationToken stop)
    {
        ToldNotices told = await toldStore.LoadAsync(stop);
        ILookup<string, KeptWindow> keptBySite = (await windows.LoadAsync(stop)).ToLookup(kept => kept.Site);
        HeldUpMail heldUp = await HeldUpMail.LoadAsync(database, configuration.Region, at, stop);
        Region region = configuration.Region with { Recipients = heldUp.Recipients };
        BulletinPass? bulletin = bulletinTime is not null && await IsBulletinDueAsync(bulletinTime, day, stop) ? new BulletinPass(configuration with { Region = region }, day) : null;
        // No site's part rests on another's, and only what is needed afterwards is held: the columns behind thousands of them would not fit.
        var sites = new JudgedSite[weather.Count];
        Parallel.For(0, sites.Length, new ParallelOptions { CancellationToken = stop }, i => sites[i] = Judge(weather[i]));
        JudgedSite[] judged = [.. sites.Where(site => site.Standing is not null)];
        List<PlannedNotice> planned = [.. judged.SelectMany(site => site.Planned)];
        KeptWindow[] keep = [.. judged.SelectMany(site => site.Windows)];
        string[] failures = [.. sites.SelectMany(site => site.Failures)];
        FeedTrouble[] troubles = [.. judged.SelectMany(site => site.Troubles)];
        string[] troublesTold = (await regionValues.FindAsync(TroublesTold, stop))?.Split('\n') ?? [];
        string[] operatorWords =
        [
            .. judged.SelectMany(site => site.OperatorWords), .. troubles.Where(trouble => !troublesTold.Contains(trouble.Key)).Select(trouble => trouble.Words), .. failures,
        ];
        MailRenewal renewal = heldUp.Renew([.. judged.Select(site => site.Standing!)]);
        planned.AddRange(renewal.StillStanding(await new Outbox(database).LoadAsync(renewal.Withdrawn, stop), region.Recipients, day, told.Last));
        var tellings = new Tellings(told.All.Select(each => (each.Key, each.Day)), planned);
        List<Message> messages = [.. MessagePlan.For([.. planned.Select(each => each with { Notice = tellings.Numbered(each.Notice) })], region, day)];
        if (operatorWords.Length > 0) messages.Add(MessagePlan.ToOperator(operatorWords, configuration.Region, day));
        var values = new Dictionary<string, string>(StringComparer.Ordinal) { [TroublesTold] = string.Join('\n', troubles.Select(trouble => trouble.Key)) };
        QueuedMessage[] bulletins = [];
        if (bulletin is not null)
        {
            TimeZoneInfo zone = TimeZoneInfo.FindSystemTimeZoneById(configuration.Region.TimeZone);
            bulletins = [.. bulletin.Write(judged.ToDictionary(site => site.Site, site => site.Bulletins)).Select(message => Queued(message, bulletinTime!.NotBefore(day, zone) ?? at))];
            values[LastBulletin] = $"{bulletinTime!.LastOn(day):yyyy-MM-dd}";
        }

        var result = new PassResult
        {
            Day = day,
            At = at,
            Configuration = configuration.JudgingFingerprint,
            Sites = [.. judged.Select(site => site.Site)],
            Windows = keep,
            Messages = [.. messages.Select(message => Queued(message, at)), .. bulletins],
            Withdrawn = heldUp.Withdrawn(renewal, bulletins),
            Forgiven = heldUp.Forgiven,
            RegionValues = values,
        };
        // Written when the pass is kept, and made ready beside its keeping, which waits for the disk.
        Task<CalendarSheets?> sheets = Task.Run(() => calendars is null ? null : CalendarPass.Prepare(calendars, configuration.Region, judged.Where(site => site.Calendar is not null).Select(site => (site.Site, site.Calendar!)), tellings, stop), stop);
        Task<int> commit = passes.CommitAsync(result, stop);
        await Task.WhenAll(commit, sheets);
        if (await sheets is not { } prepared) return new PassReport(day, keep, await commit, failures);
        string? trouble = await calendars!.WriteAsync(prepared, at, stop);
        return new PassReport(day, keep, await commit, [.. failures, .. prepared.Failures, .. trouble is null ? Array.Empty<string>() : [trouble]]);

        JudgedSite Judge(SiteWeather site)
        {
            try
            {
                KeptWindow[] kept = [.. keptBySite[site.Site.Id]];
                if (ClockBehind(site.Site, kept, dayAt(site.Site)) is { } behind) return JudgedSite.Failed(site.Site, behind);
                SiteJudging judging = SiteJudging.Judge(configuration.Treatments, site, journals.GetValueOrDefault(site.Site.Id, SiteJournal.Empty), dayAt(site.Site), memories.GetOrAdd(site.Site.Id, static _ => new SiteMemory()));
                ConfigurationChange change = ConfigurationChange.Between(kept, judging, configuration.JudgingFingerprint, day);
                return new JudgedSite(site.Site.Id)
                {
                    Standing = judging.Standing.WithReasonsMade(),
                    Windows = [.. judging.Standing.Windows.Select(window => Keep(window, judging.Standing, change.NoteFor(window)))],
                    Planned = judging.Metrics is { } metrics
                        ? NoticePlan.For(
                            judging.Standing, metrics, region, configuration.JudgingFingerprint, told.Last, judging.Ahead, heldUp.OutOfDate(judging.Standing))
                        : [],
                    OperatorWords = change.OperatorWords,
                    Troubles = FeedTrouble.Of(site, judging.Standing),
                    Bulletins = bulletin?.PartsOf(site.Site, judging) ?? JudgedSite.NoBulletins,
                }.WithCalendar(calendars is null ? null : judging, configuration.Region);
            }
            catch (Exception failure) when (failure is not OperationCanceledException)
            {
                // One site's bad day must not cost the others theirs.
                return JudgedSite.Failed(site.Site, $"{site.Site.Name} could not be judged: {failure.Message}");
            }
        }
    }

    private QueuedMessage Queued(Message message, DateTimeOffset notBefore) => new(message, rules.NotInQuiet(message.Address, notBefore));

    /// <summary>On its day, or later in the week where the service did not run on it; a new service begins with the next one.</summary>
    private async Task<bool> IsBulletinDueAsync(BulletinTime time, DateOnly day, CancellationToken stop)
    {
        DateOnly last = time.LastOn(day);
        string? kept = await regionValues.FindAsync(LastBulletin, stop);
        return kept is null ? last == day : string.CompareOrdinal(kept, $"{last:yyyy-MM-dd}") < 0;
    }

    /// <summary>Whether the clock must have been put back: then what was told already would look as if it had not come yet, and would be taken back.</summary>
    private static string? ClockBehind(Site site, KeptWindow[] kept, DateOnly day) => kept.Max(window => window.WeatherThrough) is { } through && through > day
        ? $"{site.Name} was not judged: the clock of this machine says that it is {Wording.Day(day)}, but it was judged before with the weather of {Wording.Day(through)}. Put the clock right."
        : null;

    private KeptWindow Keep(Window window, Standing standing, string? note) => new()
    {
        Site = window.Site.Id,
        Treatment = window.Treatment.Id,
        Season = window.Season.Year,
        State = window.State,
        Since = window.Since,
        Reason = window.Because.Sentence(configuration.Region.Units),
        Opened = window.FirstOpening?.Day,
        PastBest = window.PastBest?.Day,
        ClosedOn = window.LastClosing?.Day,
        JudgedOn = standing.Day,
        WeatherThrough = standing.WeatherThrough,
        Configuration = configuration.JudgingFingerprint,
        ConfigurationNote = note,
    };
}
