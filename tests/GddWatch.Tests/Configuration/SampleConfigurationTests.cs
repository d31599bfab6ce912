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

    public static TheoryData<string> TreatmentIds => ["spring-pre-emergent", "grub-preventive", "overseeding"];

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

        Assert.Contains(treatment.Cautions, sentence => sentence.Contains("label is the law"));
        Assert.Contains(treatment.Cautions, sentence => sentence.Contains("Local rules come first") && sentence.Contains("watering"));
        Assert.Contains(treatment.Cautions, sentence => sentence.Contains("not a prescription"));
        Assert.NotEmpty(treatment.Do);
        Assert.NotEmpty(treatment.DoNot);
        // Amounts of a product are the label's business: no unit of mass, volume or area stands in what people are told.
        IEnumerable<string> told = treatment.Do.Concat(treatment.DoNot).Concat(treatment.Cautions);
        Assert.All(told, sentence => Assert.DoesNotMatch(@"[0-9]\s*(lb|lbs|pounds?|oz|ounces?|fl|gal|gallons?|pints?|quarts?|g|kg|ml|l|litres?|liters?|%)\b", sentence));
        Assert.All(told, sentence => Assert.DoesNotMatch(@"(?i)per (acre|hectare|1,?000|square)", sentence));
    }

    [Theory]
    [InlineData("spring-pre-emergent", "overseeding")]
    [InlineData("overseeding", "spring-pre-emergent")]
    public void Seed_and_pre_emergent_forbid_each_other_and_say_what_is_not_recorded(string id, string other)
    {
        Exclusion exclusion = Assert.Single(Reading.Configuration!.Treatments.Single(each => each.Id == id).Excludes);

        Assert.Equal(other, exclusion.Treatment);
        Assert.Contains("choose", exclusion.Choice);
        Assert.Contains("pre-emergent is recorded here", exclusion.NotRecorded);
        Assert.Contains("do not seed before its label allows", exclusion.NotRecorded);
    }

    [Fact]
    public void Only_the_grub_preventive_asks_for_a_history_and_three_sites_have_it()
    {
        Treatment grubs = Reading.Configuration!.Treatments.Single(treatment => treatment.OnlyWithHistory is not null);

        Assert.Equal("grub-preventive", grubs.Id);
        Assert.Equal(["north-common", "mill-green", "pecan-court"], Reading.Configuration.Region.Sites.Where(grubs.IsToldAt).Select(site => site.Id));
    }
}
