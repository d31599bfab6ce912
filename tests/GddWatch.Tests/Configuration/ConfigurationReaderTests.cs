using GddWatch.Agronomy.Changes;
using GddWatch.Agronomy.Heat;
using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Treatments;
using GddWatch.Agronomy.Treatments.Conditions;
using GddWatch.Agronomy.Weather;
using GddWatch.Configuration;
using GddWatch.Feeds.Archives;
using GddWatch.Feeds.Csv;
using GddWatch.Feeds.Services;
using GddWatch.Feeds.Faults;
using Xunit;

namespace GddWatch.Tests.Configuration;

/// <summary>What becomes of a configuration without a fault, and that all faults of a bad one come at once.</summary>
public sealed class ConfigurationReaderTests
{
    [Fact]
    public void The_region_is_what_was_written()
    {
        using var folder = new ConfigurationFolder();

        Region region = folder.Read().Configuration!.Region;

        Assert.Equal(("Small", "America/Chicago", ReadersUnits.UnitedStates, "operator@example.org"), (region.Name, region.TimeZone, region.Units, region.OperatorAddress));
        Site one = region.Sites[0];
        Assert.Equal(("one", "Site One", 41.6, -93.3, 250.0), (one.Id, one.Name, one.Latitude, one.Longitude, one.ElevationM));
        Assert.Equal((SoilTexture.SiltLoam, SoilSource.Estimated, "America/Chicago"), (one.Soil!.Value, one.SoilTemperature, one.TimeZone));
        Assert.Equal([TurfType.WarmSeason, TurfType.CoolSeason], region.Sites[1].Turf);
        // 197 ft of 0.3048 m each (the international foot, common practice).
        Assert.Equal(60.0456, region.Sites[1].ElevationM, 9);
        Assert.Equal((null, null, true), (region.Recipients[0].Sites, region.Recipients[0].Treatments, region.Recipients[0].Together));
        Assert.Equal(Recipient.UsualNotices, region.Recipients[0].Notices);
        Assert.Equal(["one", "two"], region.Recipients[1].Sites!);
        Assert.Equal([NoticeKind.Opened, NoticeKind.Closing], region.Recipients[1].Notices);
        LocalRule rule = Assert.Single(region.Rules);
        Assert.Equal((WorkKind.Feeding, AnnualDay.Of(11, 15), AnnualDay.Of(3, 1), new DateOnly(2026, 10, 1)), (rule.Kind, rule.From, rule.Until, rule.Reviewed));
    }

    [Fact]
    public void The_feeds_start_at_the_folder_that_holds_the_configuration()
    {
        using var folder = new ConfigurationFolder();

        WatchConfiguration configuration = folder.Read().Configuration!;

        string home = Path.GetDirectoryName(folder.Path)!;
        Assert.Equal(home, configuration.BaseFolder);
        Assert.Equal(Path.Combine(folder.Path, "mail"), configuration.MailTemplatesFolder);
        CsvFeedDefinition csv = Assert.IsType<CsvFeedDefinition>(Assert.Single(configuration.Feeds["one"]));
        Assert.Equal((Path.Combine(home, "weather/one.csv"), "date", FileTemperatureUnit.Celsius, FileLengthUnit.Millimetre), (csv.Path, csv.DateColumn, csv.TemperatureUnit, csv.PrecipitationUnit!.Value));
        Assert.Equal(("low", "high", "rain"), (csv.Columns[WeatherVariable.MinimumAirC], csv.Columns[WeatherVariable.MaximumAirC], csv.Columns[WeatherVariable.PrecipitationMm]));
        Assert.Equal(("yyyy-MM-dd", ',', null), (csv.DateFormat, csv.Separator, csv.Comment));
        ArchiveFeedDefinition archive = Assert.IsType<ArchiveFeedDefinition>(Assert.Single(configuration.Feeds["two"]));
        Assert.Equal((ArchiveKind.UscrnDaily, Path.Combine(home, "weather/*/two.txt")), (archive.Kind, archive.Files));
    }

    [Theory]
    [InlineData("ghcn-daily-dly", ArchiveKind.GhcnDailyDly)]
    [InlineData("ghcn-daily-station-csv", ArchiveKind.GhcnDailyStationCsv)]
    [InlineData("ghcn-daily-by-year-csv", ArchiveKind.GhcnDailyByYearCsv)]
    public void A_feed_of_GHCN_Daily_names_its_station_and_its_hour(string word, ArchiveKind kind)
    {
        using var folder = new ConfigurationFolder();
        folder.Replace("region.yaml", "archive: uscrn-daily", $"archive: {word}\n        station: USC00999999\n        observed-at: morning");

        ArchiveFeedDefinition archive = Assert.IsType<ArchiveFeedDefinition>(Assert.Single(folder.Read().Configuration!.Feeds["two"]));

        Assert.Equal((kind, "USC00999999", ObservationTime.Morning), (archive.Kind, archive.Station, archive.ObservedAt!.Value));
    }

    [Theory]
    [InlineData("open-meteo", ServiceKind.OpenMeteo, "https://api.open-meteo.com/", null)]
    [InlineData("us-weather-service", ServiceKind.UsWeatherService, "https://api.weather.gov/", null)]
    [InlineData("noaa-daily-summaries\n        station: USW00094846", ServiceKind.NoaaDailySummaries, "https://www.ncei.noaa.gov/", "USW00094846")]
    [InlineData("open-meteo\n        base-address: http://127.0.0.1:8080", ServiceKind.OpenMeteo, "http://127.0.0.1:8080/", null)]
    [InlineData("open-meteo\n        base-address: https://weather.example.org/paid", ServiceKind.OpenMeteo, "https://weather.example.org/paid/", null)]
    public void A_weather_service_is_asked_at_its_own_address_or_at_another(string text, ServiceKind kind, string address, string? station)
    {
        using var folder = new ConfigurationFolder();
        folder.Replace("region.yaml", "files: weather/*/two.txt", $"files: weather/*/two.txt\n      - service: {text}");

        ServiceFeedDefinition service = Assert.IsType<ServiceFeedDefinition>(folder.Read().Configuration!.Feeds["two"][1]);

        Assert.Equal((kind, new Uri(address), station), (service.Kind, service.BaseAddress, service.Station));
    }

    [Fact]
    public void All_that_a_CSV_feed_can_say_arrives()
    {
        const string Feed = """
            csv: ../other/folder/
                    separator: ";"
                    date-format: MM/dd/yyyy
                    missing: ["", "NA", "-9999"]
                    comment: "#"
                    site-column: { name: station, value: ITH }
                    observed-at: morning
            """;
        using var folder = new ConfigurationFolder(region: ConfigurationFolder.Region.Replace("csv: weather/one.csv", Feed));

        ConfigurationReading reading = folder.Read();

        Assert.Empty(reading.Faults);
        CsvFeedDefinition csv = Assert.IsType<CsvFeedDefinition>(Assert.Single(reading.Configuration!.Feeds["one"]));
        Assert.Equal(Path.GetFullPath(Path.Combine(folder.Path, "../../other/folder/")), csv.Path);
        Assert.EndsWith("/", csv.Path);
        Assert.Equal((';', "MM/dd/yyyy", "#", ObservationTime.Morning), (csv.Separator, csv.DateFormat, csv.Comment, csv.ObservedAt));
        Assert.Equal(["", "NA", "-9999"], csv.Missing);
        Assert.Equal(("station", "ITH"), csv.SiteColumn);
    }

    [Fact]
    public void The_treatments_are_what_was_written()
    {
        using var folder = new ConfigurationFolder();

        IReadOnlyList<Treatment> treatments = folder.Read().Configuration!.Treatments;

        Treatment barrier = treatments[0];
        Assert.Equal(new SeasonRule(AnnualDay.Of(1, 1), AnnualDay.Of(7, 31)), barrier.Season);
        AllOf all = Assert.IsType<AllOf>(barrier.Opens);
        Assert.Equal(
            new SoilTemperatureCondition(
                Depth.FromCentimetres(5), 5, Passing.RisesAbove, Temperature.FromFahrenheit(50), new Holding(3, 5),
                new WhereAlreadySo(28, Temperature.FromFahrenheit(55), AnnualDay.Of(2, 15), 31)),
            all.Parts[0]);
        Assert.Equal(new CalendarGuard(AnnualDay.Of(1, 5), null), all.Parts[1]);
        Assert.Equal(
            new HeatSumCondition(
                new HeatSumDefinition(Temperature.FromCelsius(12), null, DegreeDayMethod.SimpleAverage, DegreeDayCutoff.None, AnnualDay.Of(1, 1), Depth.FromInches(1)),
                DegreeDays.FromCelsiusDays(78)),
            barrier.Closed);
        Assert.Equal(["The label is the law."], barrier.Cautions);
        Assert.Equal([new Exclusion("seeding", "Seeding", "One of the two.", "Nothing is recorded.", new HoldRule(120, Mowings: 3))], barrier.Excludes);
        Assert.Equal(
            new SoilTemperatureCondition(Depth.FromInches(2), 5, Passing.FallsBelow, Temperature.FromFahrenheit(75), new Holding(2, 2)),
            treatments[1].Opens);
        Assert.Equal(new DaysBeforeFirstFreeze(45, 0.5, Temperature.FromCelsius(0), AnnualDay.Of(10, 15)), treatments[1].Closing);
        AnyOf any = Assert.IsType<AnyOf>(treatments[1].Closed);
        Assert.Equal(
            new HeatSumCondition(
                new HeatSumDefinition(Temperature.FromFahrenheit(50), Temperature.FromFahrenheit(86), DegreeDayMethod.SingleSine, DegreeDayCutoff.Horizontal, AnnualDay.Of(3, 1)),
                DegreeDays.FromFahrenheitDays(2000)),
            any.Parts[0]);
        Assert.IsType<SoilTemperatureCondition>(Assert.IsType<Not>(any.Parts[1]).Part);
    }

    [Fact]
    public void All_faults_of_both_files_come_at_once_from_the_top_down()
    {
        using var folder = new ConfigurationFolder();
        folder.Replace("region.yaml", "elevation: 250 m", "elevation: 250");
        folder.Replace("region.yaml", "    soil: silt loam", "    sol: silt loam");
        folder.Replace("region.yaml", "name: Site Two\n    latitude: 32.5", "name: Site Two\n    latitude: 325");
        folder.Replace("region.yaml", "crew@example.org", "crew.example.org");
        folder.Replace("treatments.yaml", "rises-above: 50 °F", "rises-above: 50");
        folder.Replace("treatments.yaml", "cautions: [label]", "cautions: [lable]");

        IReadOnlyList<Fault> faults = folder.Read().Faults;

        Assert.Equal(["250", "sol", "325", "crew.example.org", "50", "lable"], faults.Select(fault => fault.Found!));
        Assert.Equal([10, 12, 19, 31, 13, 21], faults.Select(fault => fault.Line!.Value));
    }

    [Fact]
    public void A_relative_configuration_folder_gives_paths_as_people_wrote_them()
    {
        var paths = new ConfigurationPaths("config");

        Assert.Equal("data-samples/one.csv", paths.Resolve("data-samples/one.csv"));
        Assert.Equal("data-samples/", paths.Resolve("data-samples/"));
        Assert.Equal("../shared/*/x.txt", paths.Resolve("../shared/*/x.txt"));
        Assert.Equal("/srv/x.csv", paths.Resolve("/srv/x.csv"));
        Assert.Equal(Path.GetFullPath("."), paths.BaseFolder);
        Assert.Equal(paths.BaseFolder, new ConfigurationPaths("config/").BaseFolder);
    }
}
