using Xunit;

namespace GddWatch.Tests.Configuration;

/// <summary>Every rule of region.yaml, each broken once: where the fault points, what was found, what would be accepted.</summary>
public sealed class SpoiltRegionTests
{
    [Theory]
    [InlineData("quiet: { from: ¦9pm, until: \"07:00\" }", "9pm", "not a time of day", "hours:minutes")]
    [InlineData("quiet: ¦{ from: \"21:00\" }", null, "\"until\" is missing", "When it ends")]
    [InlineData("quiet: ¦{ from: \"07:00\", until: \"07:00\" }", null, "have no length", "paused-until")]
    [InlineData("time-zone: ¦Amerika/Chicago", "Amerika/Chicago", "no such time zone", "tz database")]
    public void The_quiet_hours(string marked, string? found, string problem, string accepted) =>
        Spoilt.Holds("region.yaml", "    sites: all\n    treatments: all", $"    {marked}\n    sites: all\n    treatments: all", found, problem, accepted);

    [Theory]
    [InlineData("    soil: silt loam", "    ¦sol: silt loam", "sol", "not known here", "\"soil\" is the nearest")]
    [InlineData("    soil: silt loam", "    ¦password: hush", "password", "looks like a secret", "from the environment")]
    [InlineData("id: one\n    name: Site One", "¦id: one", null, "\"name\" is missing", "The name that people read")]
    [InlineData("name: Site One", "name: Site One\n    ¦name: Again", "name", "stands twice in this group, first in line 7", "each key once")]
    [InlineData("name: Site One", "name:¦", null, "has no value", "text")]
    [InlineData("name: Site One", "name: ¦\"  \"", "  ", "Nothing is written", "text")]
    [InlineData("name: Site One", "name: ¦[Site, One]", null, "is a list", "text")]
    [InlineData("name: Site One", "name: ¦\"Site\\aOne\"", "Site\aOne", "cannot be printed", "printable")]
    [InlineData("turf: [cool-season]", "turf: ¦cool-season", "cool-season", "is a single value", "a list such as [one, another]")]
    [InlineData("turf: [cool-season]", "turf: [cool-season]\n    ? ¦[a, b]\n    : c", null, "A key cannot be a list", "a word")]
    [InlineData("operator: { address: operator@example.org }", "operator: ¦operator@example.org", "operator@example.org", "is a single value", "a group of keys: address")]
    public void The_shape_of_the_file(string good, string marked, string? found, string problem, string accepted) =>
        Spoilt.Holds("region.yaml", good, marked, found, problem, accepted);

    [Theory]
    [InlineData("elevation: 250 m", "elevation: ¦250", "250", "A height needs its unit", "\"250 m\" or \"820 ft\"")]
    [InlineData("elevation: 250 m", "elevation: ¦1,5 m", "1,5 m", "not a height", "\"250 m\"")]
    [InlineData("elevation: 250 m", "elevation: ¦250 cm", "250 cm", "not a height", "\"250 m\"")]
    [InlineData("elevation: 250 m", "elevation: ¦25000 m", "25000 m", "No lawn lies", "6000 m")]
    [InlineData("latitude: 41.6", "latitude: ¦141.6", "141.6", "no such latitude", "-90 to 90 degrees")]
    [InlineData("latitude: 41.6", "latitude: ¦NaN", "NaN", "not a number", "such as 41.6")]
    [InlineData("latitude: 41.6", "latitude: ¦41.6 N", "41.6 N", "not a number", "such as 41.6")]
    [InlineData("longitude: -93.3", "longitude: ¦-193.3", "-193.3", "no such longitude", "-180 to 180 degrees")]
    [InlineData("time-zone: America/Chicago", "time-zone: ¦America/Chicgo", "America/Chicgo", "no such time zone", "\"America/Chicago\" is the nearest")]
    [InlineData("time-zone: America/Chicago", "time-zone: ¦../../etc/localtime", "../../etc/localtime", "no such time zone", "tz database")]
    [InlineData("soil: silt loam", "time-zone: ¦Mars/Olympus", "Mars/Olympus", "no such time zone", "tz database")]
    [InlineData("units: us", "units: ¦imperial", "imperial", "not a word that is known here", "us, metric")]
    [InlineData("turf: [cool-season]", "turf: [¦cool-seeson]", "cool-seeson", "not a word that is known here", "\"cool-season\" is the nearest")]
    [InlineData("turf: [cool-season]", "turf: ¦[]", null, "No turf is named", "cool-season, warm-season or both")]
    [InlineData("turf: [cool-season]", "turf: [cool-season, ¦cool-season]", "cool-season", "stands twice", "each entry once")]
    [InlineData("soil: silt loam", "prefers: [barrier, ¦seeding]", "seeding", "\"seeding\" and \"barrier\" forbid each other", "the one of the two that comes first here")]
    [InlineData("soil: silt loam", "soil: ¦silty loam", "silty loam", "not a word that is known here", "\"silt loam\" is the nearest")]
    [InlineData("soil: silt loam", "soil-temperature: ¦guessed", "guessed", "not a word that is known here", "estimated, measured")]
    public void The_places(string good, string marked, string? found, string problem, string accepted) =>
        Spoilt.Holds("region.yaml", good, marked, found, problem, accepted);

    [Theory]
    [InlineData("      - archive: uscrn-daily\n        files: weather/*/two.txt", "      ¦- service: us-weather-service", null, "nothing is judged by a forecast alone", "a feed with observed days beside it")]
    [InlineData("archive: uscrn-daily\n        files: weather/*/two.txt", "service: ¦open-meteoo", "open-meteoo", "no weather service", "\"open-meteo\" is the nearest")]
    [InlineData("archive: uscrn-daily\n        files: weather/*/two.txt", "¦service: noaa-daily-summaries", null, "\"station\" is missing", "station: USW00094846")]
    [InlineData("archive: uscrn-daily\n        files: weather/*/two.txt", "service: noaa-daily-summaries\n        station: ¦94846", "94846", "not the id of a station", "11 capital letters")]
    [InlineData("archive: uscrn-daily\n        files: weather/*/two.txt", "¦service: us-weather-service\n        station: USW00094846", "station", "does not go with a feed of the kind service: us-weather-service", "any of service, base-address")]
    [InlineData("archive: uscrn-daily\n        files: weather/*/two.txt", "¦service: open-meteo\n        files: x", "files", "does not go with a feed of the kind service: open-meteo", "any of service, base-address")]
    [InlineData("archive: uscrn-daily\n        files: weather/*/two.txt", "service: open-meteo\n        base-address: ¦http://weather.example.org/", "http://weather.example.org/", "without https", "http only for this machine")]
    [InlineData("archive: uscrn-daily\n        files: weather/*/two.txt", "service: open-meteo\n        base-address: ¦file:///etc/passwd", "file:///etc/passwd", "not the address of a weather service", "https://weather.example.org/")]
    [InlineData("archive: uscrn-daily", "¦archive: ghcn-daily-by-year-csv", null, "\"station\" is missing", "station: USW00094846")]
    [InlineData("archive: uscrn-daily", "archive: ghcn-daily-dly\n        station: ¦USW9484", "USW9484", "not the id of a station", "11 capital letters")]
    [InlineData("archive: uscrn-daily", "¦archive: uscrn-daily\n        station: USW00094846", "station", "does not go with a feed of the kind archive: uscrn-daily", "any of archive, files")]
    [InlineData("archive: uscrn-daily", "archive: ghcn-daily-dly\n        observed-at: ¦noon", "noon", "not a word that is known here", "midnight, morning")]
    [InlineData("archive: uscrn-daily", "archive: ¦uscrn-dayly", "uscrn-dayly", "no archive", "\"uscrn-daily\" is the nearest")]
    [InlineData("archive: uscrn-daily\n        files: weather/*/two.txt", "¦archive: uscrn-daily", null, "\"files\" is missing", "CRND0103")]
    [InlineData("archive: uscrn-daily\n        files", "¦files", null, "does not say what it is", "csv with the path")]
    [InlineData("archive: uscrn-daily", "¦archive: uscrn-daily\n        csv: a.csv", "archive, csv", "several things at once", "one entry of the list for each feed")]
    [InlineData("csv: weather/one.csv", "¦csv: weather/one.csv\n        files: x", "files", "does not go with a feed of the kind csv", "any of csv, columns")]
    [InlineData("csv: weather/one.csv", "csv: weather/one.csv\n        observed-at: ¦noon", "noon", "not a word that is known here", "midnight, morning")]
    [InlineData("csv: weather/one.csv", "csv: weather/one.csv\n        date-format: ¦yyyy-mm-dd", "yyyy-mm-dd", "not the form of a date", "yyyy-MM-dd")]
    [InlineData("csv: weather/one.csv", "csv: weather/one.csv\n        separator: ¦\", \"", ", ", "not a single character", "one character")]
    [InlineData("csv: weather/one.csv", "csv: weather/one.csv\n        site-column: ¦{ name: station }", null, "\"value\" is missing", "this site's rows")]
    [InlineData("units: { temperature: °C, precipitation: mm }", "units: ¦{ temperature: °C }", null, "unit of precipitation is missing", "mm, cm or in")]
    [InlineData("units: { temperature: °C, precipitation: mm }", "units: { temperature: ¦K, precipitation: mm }", "K", "not a word that is known here", "°C, °F")]
    [InlineData("units: { temperature: °C, precipitation: mm }", "units: ¦{ precipitation: mm }", null, "\"temperature\" is missing", "°C, °F")]
    [InlineData("maximum: high", "maximum: ¦low", "low", "said to hold two things", "a column of its own")]
    [InlineData("columns: { date: date, minimum: low", "columns: ¦{ date: date", null, "\"minimum\" is missing", "The lowest air temperature")]
    public void The_feeds(string good, string marked, string? found, string problem, string accepted) =>
        Spoilt.Holds("region.yaml", good, marked, found, problem, accepted);

    [Theory]
    [InlineData("address: adviser@example.org", "address: ¦adviser.example.org", "adviser.example.org", "not a mail address", "adviser@example.org")]
    [InlineData("address: adviser@example.org", "address: ¦adviser@localhost", "adviser@localhost", "not a mail address", "a domain with a dot")]
    [InlineData("address: crew@example.org", "address: ¦Adviser@example.org", "Adviser@example.org", "there twice, first in line", "one entry for each address")]
    [InlineData("address: operator@example.org", "address: ¦operator@@example.org", "operator@@example.org", "not a mail address", "one @")]
    [InlineData("sites: [one, two]", "sites: [one, ¦towo]", "towo", "no site \"towo\"", "\"two\" is the nearest")]
    [InlineData("sites: [one, two]", "sites: ¦[]", null, "No site is named", "all, or at least one site")]
    [InlineData("sites: all", "sites: ¦every", "every", "is a single value", "the word all, or a list")]
    [InlineData("treatments: [barrier, seeding]", "treatments: [barrier, ¦sedeing]", "sedeing", "no treatment", "\"seeding\" is the nearest")]
    [InlineData("notices: [opened, closing]", "notices: [opened, ¦closeing]", "closeing", "not a word that is known here", "\"closing\" is the nearest")]
    [InlineData("notices: [opened, closing]", "notices: ¦[]", null, "would hear nothing", "paused-until")]
    [InlineData("together: true", "together: ¦yes", "yes", "neither true nor false", "true or false")]
    [InlineData("together: true", "paused-until: ¦2027-02-30", "2027-02-30", "not a date of the calendar", "2027-01-01")]
    [InlineData("from: 11-15", "from: ¦11-31", "11-31", "No year has such a day", "05-01 for 1 May")]
    [InlineData("sites: [one], source", "sites: [¦nowhere], source", "nowhere", "no site \"nowhere\"", "one of one, two")]
    [InlineData("{ kind: feeding, from: 11-15, until: 03-01, sites: [one], source: invented, reviewed: 2026-10-01 }", "¦{ kind: feeding, from: 11-15, until: 03-01, sites: [one], source: invented }", null, "\"reviewed\" is missing", "somebody last checked it")]
    public void The_people_and_the_local_law(string good, string marked, string? found, string problem, string accepted) =>
        Spoilt.Holds("region.yaml", good, marked, found, problem, accepted);

    [Theory]
    [InlineData("- id: two", "- id: ¦Two Sites", "Two Sites", "not short and plain", "lower-case letters")]
    [InlineData("- id: two", "- id: ¦../two", "../two", "not short and plain", "such as north-common")]
    [InlineData("- id: two", "- id: ¦one", "one", "there twice, first in line 6", "an id of its own")]
    public void The_ids(string good, string marked, string? found, string problem, string accepted)
    {
        // The crew's list names the site, which would be a second fault.
        string everyone = ConfigurationFolder.Region.Replace("sites: [one, two]", "sites: all");
        Spoilt.Holds("region.yaml", ConfigurationFolder.Region, everyone.Replace(good, marked), found, problem, accepted);
    }
}
