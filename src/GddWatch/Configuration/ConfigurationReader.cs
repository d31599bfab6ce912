using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Treatments;
using GddWatch.Configuration.Reading;
using GddWatch.Configuration.Texts;
using GddWatch.Configuration.Yaml;
using GddWatch.Feeds;
using GddWatch.Feeds.Services;

namespace GddWatch.Configuration;

/// <summary>Reads region.yaml and treatments.yaml, and finds all faults of both in one go.</summary>
public static class ConfigurationReader
{
    /// <summary>The file of sites, feeds, people and local law.</summary>
    public const string RegionFile = "region.yaml";

    /// <summary>The file of the lawn year.</summary>
    public const string TreatmentsFile = "treatments.yaml";

    /// <summary>The folder of the mail templates, inside the configuration folder.</summary>
    public const string MailFolder = "mail";

    /// <summary>Reads the configuration in a folder. Whatever is wrong is a fault, never an exception.</summary>
    public static ConfigurationReading Read(string configFolder)
    {
        ArgumentException.ThrowIfNullOrWhiteSpace(configFolder);
        var paths = new ConfigurationPaths(configFolder);
        ConfigurationFile region = ConfigurationFile.Read(paths.InConfiguration(RegionFile));
        ConfigurationFile treatments = ConfigurationFile.Read(paths.InConfiguration(TreatmentsFile));
        var treatmentsReader = new TreatmentsReader(treatments.Faults);
        TreatmentsFileText? treatmentsText = treatments.Bind<TreatmentsFileText>();
        IReadOnlyList<Treatment> allTreatments = treatmentsReader.Read(treatmentsText);
        IReadOnlyList<NotYet> notYet = treatmentsReader.ReadNotYet(treatmentsText);
        var regionReader = new RegionReader(region.Faults, paths, treatments.NamesUnder("treatments"), allTreatments);
        Region? wholeRegion = regionReader.Read(region.Bind<RegionFileText>());
        if (region.Faults.Count + treatments.Faults.Count > 0 || wholeRegion is null)
        {
            return new ConfigurationReading(null, [.. region.Faults.InOrder, .. treatments.Faults.InOrder]);
        }

        return new ConfigurationReading(
            new WatchConfiguration
            {
                Region = wholeRegion with { Remark = string.Join(' ', [.. new[] { wholeRegion.Remark }.Where(remark => remark.Length > 0), .. Sources(regionReader.Feeds)]) },
                Treatments = allTreatments,
                NotYet = notYet,
                Feeds = regionReader.Feeds,
                BaseFolder = paths.BaseFolder,
                MailTemplatesFolder = paths.InConfiguration(MailFolder),
                Fingerprint = Fingerprint.OfFiles(region.Bytes, treatments.Bytes),
                JudgingFingerprint = Fingerprint.OfJudging(region.Tree, treatments.Tree),
            },
            []);
    }

    /// <summary>The sentences that name the open services whose values are used, as their licences ask for it: they stand wherever the region's remark stands.</summary>
    private static IEnumerable<string> Sources(IReadOnlyDictionary<string, IReadOnlyList<FeedDefinition>> feeds) =>
        feeds.Values.SelectMany(each => each).OfType<ServiceFeedDefinition>().Select(feed => feed.Kind).Distinct().Order().Select(ServiceFacts.Attribution);
}
