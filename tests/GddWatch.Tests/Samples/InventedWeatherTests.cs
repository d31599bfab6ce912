using System.Globalization;
using System.Text;
using GddWatch.InventedWeather;
using Xunit;

namespace GddWatch.Tests.Samples;

/// <summary>The files in data-samples as they are committed.</summary>
public sealed class InventedWeatherTests
{
    private static readonly string Folder = Path.Combine(SharedFiles.RepositoryRoot, "data-samples");

    public static TheoryData<string> Sites => [.. AlderReach.Climates.Select(climate => climate.Id)];

    [Theory]
    [MemberData(nameof(Sites))]
    public void The_generator_gives_exactly_the_committed_bytes(string id)
    {
        string again = InventedFile.Compose(ClimateOf(id), AlderReach.FirstDay, AlderReach.LastDay, AlderReach.Seed);

        Assert.True(
            Encoding.UTF8.GetBytes(again).AsSpan().SequenceEqual(File.ReadAllBytes(PathOf(id))),
            $"{PathOf(id)} is not what the generator writes. Run: dotnet run --project data-samples/generator -- data-samples");
    }

    [Theory]
    [MemberData(nameof(Sites))]
    public void Every_file_says_first_of_all_that_it_is_invented(string id)
    {
        string[] lines = File.ReadAllLines(PathOf(id));

        Assert.StartsWith("# INVENTED weather", lines[0], StringComparison.Ordinal);
        Assert.Contains($"seed {AlderReach.Seed}", lines[1], StringComparison.Ordinal);
        Assert.Equal("date,tmin_c,tmax_c,rain_mm", lines[2]);
    }

    [Fact]
    public void The_notes_beside_the_files_name_the_seed_and_every_site_and_no_file_lacks_a_climate()
    {
        string notes = File.ReadAllText(Path.Combine(Folder, "README.md"));

        Assert.Contains("invented", notes, StringComparison.Ordinal);
        Assert.Contains($"seed {AlderReach.Seed}", notes, StringComparison.Ordinal);
        Assert.All(AlderReach.Climates, climate => Assert.Contains($"`{climate.Id}`", notes, StringComparison.Ordinal));
        Assert.Equal(
            AlderReach.Climates.Select(InventedFile.NameOf).Order(StringComparer.Ordinal),
            Directory.GetFiles(Folder, "*.csv").Select(path => Path.GetFileName(path)).Order(StringComparer.Ordinal));
    }

    [Theory]
    [MemberData(nameof(Sites))]
    public void Every_site_has_at_least_twelve_full_years_without_a_missing_day(string id)
    {
        List<InventedDay> days = Read(id);

        Assert.Equal((1, 1), (days[0].Date.Month, days[0].Date.Day));
        Assert.Equal((12, 31), (days[^1].Date.Month, days[^1].Date.Day));
        Assert.True(days[^1].Date.Year - days[0].Date.Year + 1 >= 12, $"{days[0].Date} to {days[^1].Date}");
        Assert.All(Enumerable.Range(0, days.Count), i => Assert.Equal(days[0].Date.AddDays(i), days[i].Date));
        Assert.Contains(days, day => day.Date is { Month: 2, Day: 29 });
    }

    [Theory]
    [MemberData(nameof(Sites))]
    public void No_minimum_is_above_its_maximum_and_no_value_is_absurd(string id) =>
        Assert.All(Read(id), day =>
        {
            Assert.True(day.MinimumC < day.MaximumC, $"{day}");
            Assert.InRange(day.MinimumC, -40, 30);
            Assert.InRange(day.MaximumC, -35, 44);
            Assert.InRange(day.RainMm, 0, 300);
        });

    // Common practice: spring comes weeks earlier in one year than in another; a demonstration without that shows nothing.
    [Theory]
    [MemberData(nameof(Sites))]
    public void Springs_of_one_site_differ_by_weeks(string id)
    {
        List<int> arrivals = [.. Read(id).GroupBy(day => day.Date.Year).Select(DayOfThe200ThDegreeDay)];

        Assert.InRange(arrivals.Max() - arrivals.Min(), 10, 90);
    }

    private static int DayOfThe200ThDegreeDay(IEnumerable<InventedDay> year)
    {
        double sum = 0;
        foreach (InventedDay day in year)
        {
            sum += Math.Max(0, ((day.MinimumC + day.MaximumC) / 2) - 10);
            if (sum >= 200)
            {
                return day.Date.DayOfYear;
            }
        }

        throw new InvalidOperationException("A year without 200 degree-days above 10 °C.");
    }

    private static List<InventedDay> Read(string id) =>
        [.. File.ReadLines(PathOf(id)).Skip(3).Select(line => line.Split(',')).Select(cells => new InventedDay(
            DateOnly.ParseExact(cells[0], "yyyy-MM-dd", CultureInfo.InvariantCulture),
            double.Parse(cells[1], CultureInfo.InvariantCulture),
            double.Parse(cells[2], CultureInfo.InvariantCulture),
            double.Parse(cells[3], CultureInfo.InvariantCulture)))];

    private static InventedClimate ClimateOf(string id) =>
        AlderReach.Climates.Single(climate => string.Equals(climate.Id, id, StringComparison.Ordinal));

    private static string PathOf(string id) => Path.Combine(Folder, $"{id}.csv");
}
