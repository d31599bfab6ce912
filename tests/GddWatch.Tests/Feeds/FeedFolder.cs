using System.Text;
using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Weather;
using GddWatch.Feeds;
using GddWatch.Feeds.Csv;
using GddWatch.Feeds.Faults;
using Microsoft.Extensions.Time.Testing;
using Xunit;

namespace GddWatch.Tests.Feeds;

/// <summary>A folder of its own for one test, with feeds that start there. The clock stands long after every file was written.</summary>
internal sealed class FeedFolder : IDisposable
{
    public static readonly DateOnly Today = new(2025, 6, 30);

    public string Root { get; } = Directory.CreateTempSubdirectory("gddwatch-").FullName;

    public FakeTimeProvider Clock { get; } = new(new DateTimeOffset(2125, 1, 1, 0, 0, 0, TimeSpan.Zero));

    public static Site SiteAt(double latitude, double elevationM = 0) => new()
    {
        Id = "green",
        Name = "Green",
        Latitude = latitude,
        Longitude = 0,
        ElevationM = elevationM,
        TimeZone = "Etc/UTC",
        Turf = [TurfType.CoolSeason],
    };

    public static CsvFeedDefinition Csv(string path = "days.csv") => new()
    {
        Path = path,
        DateColumn = "date",
        Columns = new Dictionary<WeatherVariable, string> { [WeatherVariable.MinimumAirC] = "tmin", [WeatherVariable.MaximumAirC] = "tmax", [WeatherVariable.PrecipitationMm] = "rain" },
        TemperatureUnit = FileTemperatureUnit.Celsius,
        PrecipitationUnit = FileLengthUnit.Millimetre,
        Missing = ["", "NA"],
        Comment = "#",
    };

    /// <summary>Writes a file as it is given, in UTF-8.</summary>
    public FeedFolder With(string text, string name = "days.csv") => With(Encoding.UTF8.GetBytes(text), name);

    public FeedFolder With(byte[] bytes, string name = "days.csv")
    {
        string path = Path.Combine(Root, name);
        Directory.CreateDirectory(Path.GetDirectoryName(path)!);
        File.WriteAllBytes(path, bytes);
        return this;
    }

    public Task<FeedReading> ReadAsync(FeedDefinition? definition = null, double latitude = 45, TimeProvider? clock = null) =>
        FeedFactory.Create(definition ?? Csv(), Root, clock ?? Clock).ReadAsync(SiteAt(latitude), Today, TestContext.Current.CancellationToken);

    /// <summary>Reads the lines under the usual header, date,tmin,tmax,rain.</summary>
    public Task<FeedReading> ReadLinesAsync(params string[] lines) => With($"date,tmin,tmax,rain\n{string.Join('\n', lines)}\n").ReadAsync();

    public void Dispose() => Directory.Delete(Root, recursive: true);
}

internal static class Readings
{
    public static IEnumerable<Fault> Telling(this FeedReading reading) =>
        reading.Faults.Where(fault => !fault.Problem.StartsWith("So few months", StringComparison.Ordinal));

    public static Fault OnlyFault(this FeedReading reading) => Assert.Single(reading.Telling());

    /// <summary>A day's value, or null where the series does not know it.</summary>
    public static double? At(this FeedReading reading, string day, WeatherVariable variable = WeatherVariable.MinimumAirC)
    {
        DateOnly date = DateOnly.ParseExact(day, "yyyy-MM-dd");
        if (reading.Series is not { } series || !series.Holds(date) || !series.Has(variable)) return null;
        double value = series.Column(variable)[series.IndexOf(date)];
        return double.IsNaN(value) ? null : value;
    }

    public static double? MaximumAt(this FeedReading reading, string day) => reading.At(day, WeatherVariable.MaximumAirC);

    public static double? RainAt(this FeedReading reading, string day) => reading.At(day, WeatherVariable.PrecipitationMm);
}
