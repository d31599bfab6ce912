using GddWatch.Agronomy.Changes;
using GddWatch.Agronomy.Places;
using GddWatch.Configuration;

namespace GddWatch.Watching;

/// <summary>Writes the weekly bulletin: one mail a region and person.</summary>
internal static class BulletinPass
{
    private static readonly string[] Cautions =
    [
        "This gives timing, not a prescription. The product's label is the law; local codes, licences and watering rules come first, and a licensed applicator's judgement stands above this.",
    ];

    /// <summary>The bulletins of a day.</summary>
    public static IEnumerable<Message> Write(WatchConfiguration configuration, IReadOnlyDictionary<string, SiteJudging> judgings, DateOnly day)
    {
        Region region = configuration.Region;
        var writer = new BulletinWriter(configuration.Treatments, configuration.NotYet, region);
        // Several people read the same sites: each is written once for each choice of treatments.
        var written = new Dictionary<(string Site, string Treatments), BulletinSite>();
        foreach (Recipient recipient in region.Recipients.Where(each => each.Notices.Contains(NoticeKind.Bulletin) && (each.PausedUntil is not { } until || day >= until)))
        {
            string choice = recipient.Treatments is { } some ? string.Join(' ', some) : "";
            var sites = new List<BulletinSite>();
            foreach (Site site in region.Sites.Where(site => (recipient.Sites is null || recipient.Sites.Contains(site.Id)) && judgings.ContainsKey(site.Id)))
            {
                if (!written.TryGetValue((site.Id, choice), out BulletinSite? part))
                {
                    SiteJudging judging = judgings[site.Id];
                    part = writer.Write(site, judging.Standing, judging.Metrics, judging.Chances, id => recipient.Treatments is null || recipient.Treatments.Contains(id));
                    written.Add((site.Id, choice), part);
                }

                sites.Add(part);
            }

            if (sites.Count > 0) yield return MessagePlan.BulletinFor(recipient, new Bulletin(sites, Reasons(configuration, sites), [.. Cautions, .. Sprays(configuration, sites)]), region, day);
        }
    }

    /// <summary>Each reason once, for what is named at any of the sites or needs no window to wait for.</summary>
    private static IReadOnlyList<BulletinLine> Reasons(WatchConfiguration configuration, IReadOnlyList<BulletinSite> sites) =>
        [.. configuration.NotYet.Where(each => sites.Any(site => site.Waits.Any(line => line.What == each.Name) || site.Always.Contains(each.Name))).Select(each => new BulletinLine(each.Name, each.Reason))];

    /// <summary>Where weed or insect control stands open: what a forecast can and cannot say, and the other cautions of such work.</summary>
    private static IEnumerable<string> Sprays(WatchConfiguration configuration, IReadOnlyList<BulletinSite> sites)
    {
        string[] control = [.. configuration.Treatments.Where(treatment => treatment.Work is WorkKind.WeedControl or WorkKind.InsectControl).Select(treatment => treatment.Name)];
        if (sites.Any(site => site.Open.Any(line => control.Contains(line.What))))
        {
            yield return "Weed and insect control: a day that is not ruled out here is not made suitable by that; check wind and temperature on site, mow flowers off for the bees, wear what the label asks for, and keep people and pets off until it is dry.";
        }
    }
}
