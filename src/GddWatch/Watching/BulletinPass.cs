using GddWatch.Agronomy.Changes;
using GddWatch.Agronomy.Places;
using GddWatch.Configuration;

namespace GddWatch.Watching;

/// <summary>Writes the weekly bulletin of a day: one mail a region and person.</summary>
internal sealed class BulletinPass(WatchConfiguration configuration, DateOnly day)
{
    private static readonly string[] Cautions =
    [
        "This gives timing, not a prescription. The product's label is the law; local codes, licences and watering rules come first, and a licensed applicator's judgement stands above this.",
    ];

    private readonly BulletinWriter writer = new(configuration.Treatments, configuration.NotYet, configuration.Region);

    // Its readers.
    private readonly Recipient[] recipients = [.. configuration.Region.Recipients.Where(each => each.Notices.Contains(NoticeKind.Bulletin) && (each.PausedUntil is not { } until || day >= until))];

    /// <summary>What it says of a site, by the choice of treatments: several people read of the same site, and each choice is written once.</summary>
    public IReadOnlyDictionary<string, BulletinSite> PartsOf(Site site, SiteJudging judging)
    {
        var parts = new Dictionary<string, BulletinSite>(StringComparer.Ordinal);
        foreach (Recipient recipient in recipients.Where(each => Reads(each, site)))
        {
            if (parts.ContainsKey(ChoiceOf(recipient))) continue;
            parts.Add(ChoiceOf(recipient), writer.Write(site, judging.Standing, judging.Metrics, judging.Ahead, id => recipient.Treatments is null || recipient.Treatments.Contains(id)));
        }

        return parts;
    }

    /// <summary>The bulletins.</summary>
    /// <param name="parts">What it says of each site, by the sites' ids.</param>
    public IEnumerable<Message> Write(IReadOnlyDictionary<string, IReadOnlyDictionary<string, BulletinSite>> parts)
    {
        foreach (Recipient recipient in recipients)
        {
            BulletinSite[] sites = [.. configuration.Region.Sites.Where(site => Reads(recipient, site) && parts.ContainsKey(site.Id)).Select(site => parts[site.Id][ChoiceOf(recipient)])];
            if (sites.Length > 0) yield return MessagePlan.BulletinFor(recipient, new Bulletin(sites, Reasons(sites), [.. Cautions, .. Sprays(sites)]), configuration.Region, day);
        }
    }

    private static bool Reads(Recipient recipient, Site site) => recipient.Sites is null || recipient.Sites.Contains(site.Id);

    private static string ChoiceOf(Recipient recipient) => recipient.Treatments is { } some ? string.Join(' ', some) : "";

    /// <summary>Each reason once, for what is named at any of the sites or needs no window to wait for.</summary>
    private IReadOnlyList<BulletinLine> Reasons(IReadOnlyList<BulletinSite> sites) =>
        [.. configuration.NotYet.Where(each => sites.Any(site => site.Waits.Any(line => line.What == each.Name) || site.Always.Contains(each.Name))).Select(each => new BulletinLine(each.Name, each.Reason))];

    /// <summary>Where weed or insect control stands open: what a forecast can and cannot say, and the other cautions of such work.</summary>
    private IEnumerable<string> Sprays(IReadOnlyList<BulletinSite> sites)
    {
        string[] control = [.. configuration.Treatments.Where(treatment => treatment.Work is WorkKind.WeedControl or WorkKind.InsectControl).Select(treatment => treatment.Name)];
        if (sites.Any(site => site.Open.Any(line => control.Contains(line.What))))
        {
            yield return "Weed and insect control: a day that is not ruled out here is not made suitable by that; check wind and temperature on site, mow flowers off for the bees, wear what the label asks for, and keep people and pets off until it is dry.";
        }
    }
}
