using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Treatments;
using GddWatch.Configuration;
using GddWatch.Feeds.Csv;
using Xunit;

namespace GddWatch.Tests.Configuration;

/// <summary>The configuration that comes with the program.</summary>
public sealed class SampleConfigurationTests
{
    private static readonly ConfigurationReading Reading = ConfigurationReader.Read(Path.Combine(SharedFiles.RepositoryRoot, "config"));

    public static TheoryData<string> TreatmentIds =>
    [
        "spring-pre-emergent", "spring-pre-emergent-second", "autumn-pre-emergent", "autumn-pre-emergent-warm", "grub-preventive",
        "grub-preventive-fast", "overseeding", "warm-season-seeding", "broadleaf-spring", "broadleaf-warm",
        "broadleaf-autumn", "spring-feeding", "summer-pause", "autumn-feeding", "warm-season-feeding",
        "levelling-spring", "levelling-autumn", "levelling-warm", "aeration-autumn", "aeration-warm",
        "first-cut", "raise-the-cut", "watering-cool", "watering-warm",
    ];

    [Fact]
    public void The_sample_configuration_reads_without_a_fault()
    {
        Assert.Empty(Reading.Faults.Select(fault => fault.ToString()));
        Assert.Equal(TreatmentIds.Select(row => row.Data), Reading.Configuration!.Treatments.Select(treatment => treatment.Id));
    }

    [Fact]
    public void The_region_says_that_it_is_invented_and_writes_only_to_example_domains()
    {
        Region region = Reading.Configuration!.Region;

        Assert.Contains("invented", region.Remark);
        Assert.All(region.Recipients.Select(recipient => recipient.Address).Append(region.OperatorAddress), address => Assert.EndsWith("@example.org", address));
    }

    [Fact]
    public void Every_site_has_its_file_of_weather()
    {
        Assert.Equal(5, Reading.Configuration!.Region.Sites.Count);
        Assert.All(Reading.Configuration.Region.Sites, site =>
        {
            CsvFeedDefinition feed = Assert.IsType<CsvFeedDefinition>(Assert.Single(Reading.Configuration.Feeds[site.Id]));
            Assert.True(File.Exists(feed.Path), feed.Path);
            string header = File.ReadLines(feed.Path).First(line => !line.StartsWith(feed.Comment!, StringComparison.Ordinal));
            Assert.All(feed.Columns.Values.Append(feed.DateColumn), column => Assert.Contains(column, header.Split(feed.Separator)));
        });
    }

    [Theory]
    [MemberData(nameof(TreatmentIds))]
    public void Every_treatment_carries_the_usual_cautions_and_names_no_rate(string id)
    {
        Treatment treatment = Reading.Configuration!.Treatments.Single(each => each.Id == id);

        foreach (string part in CautionsFor(treatment)) Assert.Contains(treatment.Cautions, sentence => sentence.Contains(part, StringComparison.Ordinal));
        Assert.NotEmpty(treatment.Do);
        Assert.NotEmpty(treatment.DoNot);
        // Amounts of a product are the label's business: no unit of mass, volume or area stands in what people are told.
        IEnumerable<string> told = treatment.Do.Concat(treatment.DoNot).Concat(treatment.Cautions);
        Assert.All(told, sentence => Assert.DoesNotMatch(@"[0-9]\s*(lb|lbs|pounds?|oz|ounces?|fl|gal|gallons?|pints?|quarts?|g|kg|ml|l|litres?|liters?|%)\b", sentence));
        Assert.All(told, sentence => Assert.DoesNotMatch(@"(?i)per (acre|hectare|1,?000|square)", sentence));
    }

    /// <summary>What must be said with each kind of work (science reference, section 6).</summary>
    private static IEnumerable<string> CautionsFor(Treatment treatment)
    {
        bool isProduct = treatment.Work is WorkKind.WeedControl or WorkKind.InsectControl or WorkKind.Feeding;
        bool isPesticide = treatment.Work is WorkKind.WeedControl or WorkKind.InsectControl;
        bool isSpray = treatment.Id.StartsWith("broadleaf", StringComparison.Ordinal);
        yield return "not a prescription";
        if (isProduct || treatment.Work == WorkKind.Seeding) yield return "label is the law";
        if (treatment.Work != WorkKind.Mowing) yield return treatment.Work == WorkKind.Watering ? "Watering restrictions" : "Local rules come first";
        if (isProduct) yield return "heavy rain";
        if (isProduct) yield return "paving";
        if (treatment.Work == WorkKind.Feeding) yield return "Feed no more than local rules and the label allow";
        if (isPesticide)
        {
            yield return "chemical-resistant gloves";
            yield return "Keep people and pets off";
            yield return "licensed applicator's judgement";
        }

        if (treatment.Work == WorkKind.InsectControl || isSpray) yield return "Bees:";
        if (!isSpray) yield break;
        yield return "still air of a clear evening";
        yield return "above 85 °F";
        yield return "A forecast can rule a day out and never makes one suitable";
    }

    [Theory]
    [InlineData("spring-pre-emergent", "overseeding")]
    [InlineData("overseeding", "spring-pre-emergent")]
    public void Seed_and_pre_emergent_forbid_each_other_and_say_what_is_not_recorded(string id, string other)
    {
        Exclusion exclusion = Reading.Configuration!.Treatments.Single(each => each.Id == id).Excludes.Single(each => each.Treatment == other);

        Assert.Contains("choose", exclusion.Choice);
        Assert.Contains("recorded here", exclusion.NotRecorded);
        Assert.Contains("label allows", exclusion.NotRecorded);
    }

    [Fact]
    public void Only_the_grub_preventives_ask_for_a_history_and_three_sites_have_it()
    {
        Treatment[] grubs = [.. Reading.Configuration!.Treatments.Where(treatment => treatment.OnlyWithHistory is not null)];

        Assert.Equal(["grub-preventive", "grub-preventive-fast"], grubs.Select(treatment => treatment.Id));
        Assert.All(grubs, treatment => Assert.Equal(["north-common", "mill-green", "pecan-court"], Reading.Configuration.Region.Sites.Where(treatment.IsToldAt).Select(site => site.Id)));
    }

    [Fact]
    public void The_short_first_cut_is_told_only_where_bermudagrass_or_zoysiagrass_grows()
    {
        Treatment cut = Reading.Configuration!.Treatments.Single(treatment => treatment.Id == "first-cut");

        Assert.Equal(["pecan-court"], Reading.Configuration.Region.Sites.Where(cut.IsToldAt).Select(site => site.Id));
    }
}
