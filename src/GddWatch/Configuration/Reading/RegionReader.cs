using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Treatments;
using GddWatch.Configuration.Texts;
using GddWatch.Configuration.Yaml;
using GddWatch.Feeds;
using GddWatch.Feeds.Services;

namespace GddWatch.Configuration.Reading;

/// <summary>Turns the text of region.yaml into the region and its feeds, and finds what cannot be meant.</summary>
/// <param name="faults">Takes what is wrong.</param>
/// <param name="paths">Where relative paths start.</param>
/// <param name="treatmentIds">What treatments are called; null where that could not be read.</param>
/// <param name="treatments">The treatments that could be read.</param>
public sealed class RegionReader(FaultList faults, ConfigurationPaths paths, IReadOnlyList<string>? treatmentIds, IReadOnlyList<Treatment> treatments)
{
    private readonly Dictionary<string, IReadOnlyList<FeedDefinition>> feeds = [];
    private readonly FeedReader feedReader = new(faults, paths);

    /// <summary>Each site's feeds by its id.</summary>
    public IReadOnlyDictionary<string, IReadOnlyList<FeedDefinition>> Feeds => feeds;

    /// <summary>The region, null where anything that it needs is wrong.</summary>
    public Region? Read(RegionFileText? text)
    {
        if (text is null) return null;
        SiteText[] siteTexts = [.. text.Sites?.Items ?? []];
        if (text.Sites is { Written: 0 } none) faults.Add(none.Place, null, "There is no site.", "at least one site");
        Names.CheckIds(siteTexts.Select(each => each.Id).OfType<Placed<string>>(), "site", faults);
        if (text.Region?.TimeZone is { } zone) TimeZones.Check(zone, faults);
        Site[] sites = [.. siteTexts.Select(each => Read(each, text.Region)).OfType<Site>()];
        string[]? siteIds = text.Sites is null ? null : [.. siteTexts.Select(each => each.Id?.Value).OfType<string>()];
        Recipient[] recipients = ReadRecipients(text.Recipients?.Items ?? [], siteIds);
        LocalRule[] rules = [.. (text.Rules?.Items ?? []).Select(each => Read(each, siteIds)).OfType<LocalRule>()];
        if (text.Operator?.Address is { } address) MailAddress.Check(address, faults);
        return text is { Region: { Name: { } name, TimeZone: { } timeZone, Units: { } units } region, Operator.Address: { } operatorAddress }
            ? new Region
            {
                Name = name.Value,
                TimeZone = timeZone.Value,
                Units = units.Value,
                Remark = region.Remark?.Value ?? "",
                Sites = sites,
                Recipients = recipients,
                OperatorAddress = operatorAddress.Value,
                Rules = rules,
            }
            : null;
    }

    private Site? Read(SiteText text, RegionText? region)
    {
        CheckRange(text.Latitude, 90, "latitude", "north");
        CheckRange(text.Longitude, 180, "longitude", "east");
        if (text.TimeZone is { } own) TimeZones.Check(own, faults);
        if (text.Turf is { Written: 0 } bare) faults.Add(bare.Place, null, "No turf is named.", "cool-season, warm-season or both");
        Names.CheckOnce(text.Turf?.Items ?? [], faults);
        Names.CheckReferences(text.Prefers?.Items ?? [], treatmentIds, "treatment", faults);
        Names.CheckOnce(text.Prefers?.Items ?? [], faults);
        CheckRivals(text.Prefers?.Items ?? []);
        if (text.Feeds is { Written: 0 } dry) faults.Add(dry.Place, null, "The site has no feed.", "at least one feed, so that its weather is known");
        int faultsBefore = faults.Count;
        FeedDefinition[] siteFeeds = [.. (text.Feeds?.Items ?? []).Select(feedReader.Read).OfType<FeedDefinition>()];
        if (siteFeeds.Length > 0 && faults.Count == faultsBefore && siteFeeds.All(feed => feed is ServiceFeedDefinition { Kind: ServiceKind.UsWeatherService }))
        {
            faults.Add(text.Feeds!.Place, null, "The only feed of this site is a forecast, and nothing is judged by a forecast alone.", "a feed with observed days beside it, such as noaa-daily-summaries, open-meteo or a CSV file");
        }

        if (text.Id is { } known) feeds.TryAdd(known.Value, siteFeeds);
        if (text is not { Id: { } id, Name: { } name, Latitude: { } latitude, Longitude: { } longitude, Elevation: { } elevation, Turf: { } turf }) return null;
        return new Site
        {
            Id = id.Value,
            Name = name.Value,
            Latitude = latitude.Value,
            Longitude = longitude.Value,
            ElevationM = elevation.Value.Metres,
            TimeZone = text.TimeZone?.Value ?? region?.TimeZone?.Value ?? "",
            Turf = [.. turf.Items.Select(each => each.Value)],
            Grass = Texts(text.Grass),
            Soil = text.Soil?.Value,
            History = Texts(text.History),
            Prefers = Texts(text.Prefers),
            SoilTemperature = text.SoilTemperature?.Value ?? SoilSource.Estimated,
        };
    }

    private Recipient[] ReadRecipients(IReadOnlyList<RecipientText> texts, string[]? siteIds)
    {
        var first = new Dictionary<string, Place>(StringComparer.OrdinalIgnoreCase);
        foreach (Placed<string> address in texts.Select(each => each.Address).OfType<Placed<string>>())
        {
            MailAddress.Check(address, faults);
            if (first.TryAdd(address.Value, address.Place)) continue;
            faults.Add(address.Place, $"This recipient is there twice, first in line {first[address.Value].Line}.", "one entry for each address");
        }

        return [.. texts.Select(each => Read(each, siteIds)).OfType<Recipient>()];
    }

    private Recipient? Read(RecipientText text, string[]? siteIds)
    {
        CheckSome(text.Sites, siteIds, "site");
        CheckSome(text.Treatments, treatmentIds, "treatment");
        if (text.Notices is { Written: 0 } none) faults.Add(none.Place, null, "No kind of notice is named, so this person would hear nothing.", "at least one kind of notice, or paused-until with a date");
        Names.CheckOnce(text.Notices?.Items ?? [], faults);
        if (text.TimeZone is { } zone) TimeZones.Check(zone, faults);
        QuietHours? quiet = text.Quiet is { From: { } from, Until: { } until } ? new QuietHours(from.Value, until.Value) : null;
        if (quiet is { } whole && whole.From == whole.Until) faults.Add(text.Quiet!.Place, null, "These quiet hours have no length.", "an end that is another time than the beginning; paused-until for no mail at all");
        if (text.Address is not { } address) return null;
        return new Recipient
        {
            Address = address.Value,
            Name = text.Name?.Value ?? "",
            Sites = Some(text.Sites),
            Treatments = Some(text.Treatments),
            Notices = text.Notices is { } notices ? [.. notices.Items.Select(each => each.Value)] : Recipient.UsualNotices,
            Together = text.Together?.Value ?? false,
            Quiet = quiet,
            TimeZone = text.TimeZone?.Value,
            PausedUntil = text.PausedUntil?.Value,
        };
    }

    /// <summary>Of two treatments that forbid each other a site can prefer one.</summary>
    private void CheckRivals(IReadOnlyList<Placed<string>> preferred)
    {
        foreach (Placed<string> each in preferred)
        {
            Placed<string>? rival = preferred.TakeWhile(before => before != each)
                .FirstOrDefault(before => treatments.FirstOrDefault(treatment => treatment.Id == each.Value)?.Excludes.Any(exclusion => exclusion.Treatment == before.Value) ?? false);
            if (rival is not null) faults.Add(each.Place, each.Value, $"\"{each.Value}\" and \"{rival.Value}\" forbid each other, so that preferring both settles nothing.", "the one of the two that comes first here");
        }
    }

    private LocalRule? Read(RuleText text, string[]? siteIds)
    {
        CheckSome(text.Sites, siteIds, "site");
        return text is { Kind: { } kind, From: { } from, Until: { } until, Source: { } source, Reviewed: { } reviewed }
            ? new LocalRule(kind.Value, from.Value, until.Value, Some(text.Sites), source.Value, reviewed.Value)
            : null;
    }

    private void CheckSome(AllOrSome? some, IReadOnlyList<string>? known, string what)
    {
        if (some?.Some is not { } list) return;
        if (list.Written == 0) faults.Add(some.Place, null, $"No {what} is named.", $"all, or at least one {what}");
        Names.CheckReferences(list.Items, known, what, faults);
        Names.CheckOnce(list.Items, faults);
    }

    private void CheckRange(Placed<double>? degrees, double limit, string what, string positive)
    {
        if (degrees is null || Math.Abs(degrees.Value) <= limit) return;
        faults.Add(degrees.Place, $"There is no such {what}.", $"-{limit} to {limit} degrees, {positive} positive");
    }

    private static string[]? Some(AllOrSome? some) => some?.Names is { } names ? [.. names.Select(each => each.Value)] : null;

    private static string[] Texts(PlacedList<Placed<string>>? list) => [.. (list?.Items ?? []).Select(each => each.Value)];
}
