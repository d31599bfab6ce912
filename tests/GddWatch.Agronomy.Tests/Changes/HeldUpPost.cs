using GddWatch.Agronomy.Changes;
using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Treatments;
using GddWatch.Agronomy.Weather;
using GddWatch.Agronomy.Windows;

namespace GddWatch.Agronomy.Tests.Changes;

/// <summary>Passes over a season of 2022, with mails that are delivered only when the test says so.</summary>
internal sealed class HeldUpPost
{
    /// <summary>A season as it came.</summary>
    private static readonly DailySeries Steady = Some.SmoothYears(2010, 13);

    // Its source finds later that the spring was colder.
    private static readonly DailySeries Colder = Some.SmoothYears(2010, 13, anomalyC: day => day.Year == 2022 && day < new DateOnly(2022, 5, 10) ? -6 : 0);
    private static readonly Treatment First = Some.Treatment(Some.SoilRises(10), closing: Some.SoilRises(14.4), closed: Some.Heat(300));
    private static readonly Treatment Second = First with { Id = "second-task", Name = "Second task", Closing = null };

    private readonly Dictionary<(NoticeKey Key, string Address), Told> told = [];
    private readonly HashSet<string> ids = new(StringComparer.Ordinal);
    private readonly Treatment[] treatments;
    private DailySeries weather = Steady;

    private readonly Dictionary<(DateOnly Day, DateOnly Through, bool IsColder), (SiteMetrics, Standing)> judged;

    /// <summary>Nothing is queued yet.</summary>
    /// <param name="reader">Who is told.</param>
    /// <param name="second">Whether there is a second task, which does not go past its best.</param>
    /// <param name="judged">Days that were judged before, for several seasons that share them.</param>
    public HeldUpPost(Recipient reader, bool second = false, Dictionary<(DateOnly Day, DateOnly Through, bool IsColder), (SiteMetrics, Standing)>? judged = null)
    {
        this.judged = judged ?? [];
        Readers = [reader];
        treatments = second ? [First, Second] : [First];
        Window whole = Some.Judge(First, Steady, Some.Site(), 2022);
        (Opening, PastBest, Closing) = (whole.FirstOpening!.Day, whole.PastBest!.Day, whole.LastClosing!.Day);
    }

    public DateOnly Opening { get; }

    public DateOnly PastBest { get; }

    public DateOnly Closing { get; }

    public IReadOnlyList<Recipient> Readers { get; set; }

    /// <summary>The mails that have not been delivered, in the order in which they were queued.</summary>
    public List<Message> Waiting { get; private set; } = [];

    /// <summary>Where the windows stood at the last pass.</summary>
    public Standing? Standing { get; private set; }

    public void CorrectWeather() => weather = Colder;

    /// <summary>One pass as the service makes it: compare what waits, plan, withdraw, queue.</summary>
    public IReadOnlyList<Message> PassOn(DateOnly day, DateOnly? weatherThrough = null)
    {
        (SiteMetrics metrics, Standing) = Judge(day, weatherThrough ?? day);
        Region region = Some.Region(Some.Site(), [.. Readers]);
        HeldUpNotice[] waiting = [.. Waiting.SelectMany(HeldUp)];
        MailRenewal renewal = MailRenewal.Of(waiting, [Standing], Readers, new HashSet<string>());
        Told? Last(NoticeKey key, string address) => told.GetValueOrDefault((key with { Revision = 0 }, address));
        PlannedNotice[] planned =
        [
            .. NoticePlan.For(Standing, metrics, region, "c1", Last, heldUp: [.. waiting.Where(each => each.IsOutOfDate(Standing))]),
            .. renewal.StillStanding(Waiting.Where(message => renewal.Withdrawn.Contains(message.MessageId)), Readers, day, Last),
        ];
        IReadOnlyList<Message> fresh = MessagePlan.For(planned, region, day);
        Waiting = [.. Waiting.Where(message => !renewal.Withdrawn.Contains(message.MessageId)), .. fresh];
        foreach (Message message in fresh) Tell(message);
        return fresh;
    }

    private (SiteMetrics Metrics, Standing Standing) Judge(DateOnly day, DateOnly through)
    {
        if (judged.TryGetValue((day, through, weather == Colder), out (SiteMetrics, Standing) known)) return known;
        SiteMetrics metrics = SiteMetrics.Of(weather.Until(through)!, Some.Site());
        return judged[(day, through, weather == Colder)] = (metrics, WindowJudge.Judge(treatments, metrics, day));
    }

    private static IEnumerable<HeldUpNotice> HeldUp(Message message) => message.Notices
        .GroupBy(notice => notice.Key.Treatment, StringComparer.Ordinal)
        .Select(window => new HeldUpNotice(message.MessageId, message.Address, message.Day, [.. window.SelectMany(notice => notice.Facts)]));

    private void Tell(Message message)
    {
        if (!ids.Add(message.MessageId)) throw new InvalidOperationException($"{message.MessageId} came twice.");
        foreach ((Notice notice, ToldFact fact) in message.Notices.SelectMany(notice => notice.Facts.Select(fact => (notice, fact))))
        {
            (NoticeKey, string) place = (fact.Key with { Revision = 0 }, message.Address);
            // The database holds it: one revision of one change is told to one person once.
            if (told.TryGetValue(place, out Told? before) && before.Revision >= fact.Key.Revision) throw new InvalidOperationException($"{fact.Key} was told before.");
            told[place] = new Told(notice.Day, fact.Day, "c1", fact.Key.Revision);
        }
    }
}
