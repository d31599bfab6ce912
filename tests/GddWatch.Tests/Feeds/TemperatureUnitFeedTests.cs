using System.Globalization;
using GddWatch.Agronomy.Weather;
using GddWatch.Agronomy.Weather.Checks;
using GddWatch.Feeds;
using GddWatch.Feeds.Archives;
using GddWatch.Feeds.Csv;
using GddWatch.Feeds.Faults;
using Xunit;

namespace GddWatch.Tests.Feeds;

/// <summary>Fahrenheit in a Celsius column and Celsius in a Fahrenheit column, on real weather.</summary>
public sealed class TemperatureUnitFeedTests(ITestOutputHelper output) : IDisposable
{
    private readonly FeedFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Theory]
    [InlineData(FileTemperatureUnit.Celsius, FileTemperatureUnit.Fahrenheit)]
    [InlineData(FileTemperatureUnit.Fahrenheit, FileTemperatureUnit.Celsius)]
    public async Task A_feed_in_the_other_unit_is_refused_as_a_whole_with_numbers_and_what_to_change(FileTemperatureUnit written, FileTemperatureUnit stated)
    {
        folder.With(SmoothYear(written));

        FeedReading right = await folder.ReadAsync(FeedFolder.Csv() with { TemperatureUnit = written });
        FeedReading wrong = await folder.ReadAsync(FeedFolder.Csv() with { TemperatureUnit = stated });

        Assert.Empty(right.Faults);
        Assert.Equal(365, right.Series!.Count);
        Fault fault = Assert.Single(wrong.Faults);
        Assert.Null(wrong.Series);
        Assert.Equal(FaultSeverity.Refused, fault.Severity);
        Assert.Contains("at latitude 45°", fault.Problem, StringComparison.Ordinal);
        Assert.Matches(stated == FileTemperatureUnit.Celsius ? @"units: \{ temperature: °F \}" : @"units: \{ temperature: °C \}", fault.Accepted);
    }

    [Fact]
    public async Task Of_a_folder_only_the_file_in_the_other_unit_is_left_out()
    {
        FeedReading reading = await folder.With(SmoothYear(FileTemperatureUnit.Celsius, 2022), "years/2022.csv").With(SmoothYear(FileTemperatureUnit.Fahrenheit), "years/2023.csv")
            .ReadAsync(FeedFolder.Csv("years/"));

        Assert.Equal(("years/2023.csv", FaultSeverity.LeftOut), (reading.OnlyFault().File, reading.OnlyFault().Severity));
        Assert.Equal(new DateOnly(2022, 12, 31), reading.Series!.LastDay);
    }

    [Fact]
    public async Task Files_too_short_to_tell_alone_tell_together()
    {
        string[] lines = SmoothYear(FileTemperatureUnit.Fahrenheit).Split('\n');
        for (int i = 150; i < 200; i++) folder.With($"{lines[0]}\n{lines[i]}\n", $"days/{i}.csv");

        FeedReading reading = await folder.ReadAsync(FeedFolder.Csv("days/"));

        Assert.Contains(reading.Faults, fault => fault.File == "days/" && fault.Severity == FaultSeverity.Refused);
        Assert.Null(reading.Series);
    }

    [Fact]
    public async Task Weather_of_the_other_half_of_the_earth_is_remarked_and_used()
    {
        FeedReading reading = await folder.With(SmoothYear(FileTemperatureUnit.Celsius)).ReadAsync(latitude: -45);

        Assert.Contains("neither in °C nor in °F", reading.OnlyFault().Problem, StringComparison.Ordinal);
        Assert.Equal(365, reading.Series!.Count);
    }

    [Fact]
    public async Task Two_winter_months_that_could_be_both_are_used_with_a_remark()
    {
        string winter = string.Join('\n', SmoothYear(FileTemperatureUnit.Celsius).Split('\n')[..50]);
        FeedReading reading = await folder.With($"{winter}\n").ReadAsync(FeedFolder.Csv() with { TemperatureUnit = FileTemperatureUnit.Fahrenheit }, latitude: 50);

        Assert.Equal(FaultSeverity.Remark, Assert.Single(reading.Faults).Severity);
        Assert.Equal(49, reading.Series!.Count);
    }

    // Source: NOAA NCEI, US Climate Reference Network, 50 stations, 2010-2023. Every two months of every station, and 12 months from each quarter on. A station's true
    // unit is never doubted and a full year in the other unit always is; the shares of two months that cannot be told are the measured 2.6 and 17 %, with a little room.
    [Fact]
    public async Task Fifty_real_stations_pass_in_their_unit_and_are_refused_in_the_other()
    {
        string root = SharedFiles.Find("weather/uscrn-daily");
        Dictionary<int, Tally> tallies = new() { [2] = new(), [12] = new() };
        string[] stations = await File.ReadAllLinesAsync(Path.Combine(root, "stations.csv"), TestContext.Current.CancellationToken);
        foreach (string[] station in stations.Skip(1).Select(line => line.Split(',')))
        {
            double latitude = double.Parse(station[1], CultureInfo.InvariantCulture);
            // Where the list does not know the height the cold side is at its strictest.
            double elevationM = station[3].Length > 0 ? double.Parse(station[3], CultureInfo.InvariantCulture) : 0;
            ArchiveFeedDefinition files = new(ArchiveKind.UscrnDaily, $"*/CRND0103-*-{station[0]}.txt");
            FeedReading reading = await FeedFactory.Create(files, root, folder.Clock).ReadAsync(FeedFolder.SiteAt(latitude), FeedFolder.Today, TestContext.Current.CancellationToken);
            JudgeWhole(station[0], reading.Series!, latitude, elevationM);
            foreach ((int months, Tally tally) in tallies) JudgeSlices(reading.Series!, latitude, elevationM, months, tally);
        }

        foreach ((int months, Tally tally) in tallies) output.WriteLine($"{months} months: {tally}");
        Assert.All(tallies.Values, tally => Assert.Equal((0, 0), (tally.TrueCelsiusRefused, tally.TrueFahrenheitRefused)));
        Assert.True(tallies[2].Slices > 8000 && tallies[12].Slices > 2000);
        Assert.Equal((0, 0), (tallies[12].FahrenheitNotFound, tallies[12].CelsiusNotFound));
        Assert.InRange(tallies[2].FahrenheitNotFound / (double)tallies[2].Slices, 0, 0.035);
        Assert.InRange(tallies[2].CelsiusNotFound / (double)tallies[2].Slices, 0, 0.2);
    }

    // Source: Met Éireann, Dublin Airport, 1942-2025 (a mild sea climate, where °C and °F differ least over the year).
    [Fact]
    public async Task Dublin_passes_and_is_refused_as_Fahrenheit()
    {
        CsvFeedDefinition dublin = FeedFolder.Csv(SharedFiles.Find("weather/met-eireann/dly532.csv")) with
        {
            Columns = new Dictionary<WeatherVariable, string> { [WeatherVariable.MinimumAirC] = "mintp", [WeatherVariable.MaximumAirC] = "maxtp", [WeatherVariable.Soil10CmC] = "soil" },
            DateFormat = "dd-MMM-yy",
        };

        FeedReading celsius = await ReadAsync(dublin, 53.43);
        FeedReading fahrenheit = await ReadAsync(dublin with { TemperatureUnit = FileTemperatureUnit.Fahrenheit }, 53.43);

        Assert.Equal(new DateOnly(1942, 1, 1), celsius.Series!.FirstDay);
        Assert.Equal(9.7, celsius.MaximumAt("1942-01-01"));
        Assert.DoesNotContain(celsius.Faults, fault => fault.Severity != FaultSeverity.Remark);
        Assert.True(fahrenheit.IsRefused);
    }

    // Source: NOAA NCEI, GHCN-Daily, Reidsville NC, an export with six days whose minimum is above the maximum.
    [Fact]
    public async Task Reidsville_passes_and_loses_only_its_impossible_days()
    {
        CsvFeedDefinition reidsville = FeedFolder.Csv(SharedFiles.Find("weather/ghcn-daily/cdo-export-USC00317202-reidsville-nc.csv")) with
        {
            Columns = new Dictionary<WeatherVariable, string> { [WeatherVariable.MinimumAirC] = "TMIN", [WeatherVariable.MaximumAirC] = "TMAX" },
            DateColumn = "DATE",
            DateFormat = "yyyyMMdd",
            Missing = ["-9999"],
        };

        FeedReading celsius = await ReadAsync(reidsville, 36.4);

        string[] days = [.. celsius.Faults.Where(fault => fault.Severity == FaultSeverity.LeftOut).Select(fault => fault.Problem)];
        Assert.Equal(6, days.Length);
        Assert.All(days, problem => Assert.StartsWith("The minimum is above the maximum", problem, StringComparison.Ordinal));
        Assert.Equal((null, null), (celsius.At("1994-08-22"), celsius.MaximumAt("1997-02-02")));
        Assert.True((await ReadAsync(reidsville with { TemperatureUnit = FileTemperatureUnit.Fahrenheit }, 36.4)).IsRefused);
    }

    private static void JudgeWhole(string station, DailySeries series, double latitude, double elevationM)
    {
        Assert.Equal((station, TemperatureUnitFinding.Fits), (station, TemperatureUnitCheck.Judge(series, latitude, elevationM, TemperatureScale.Celsius).Finding));
        Assert.Equal((station, TemperatureUnitFinding.Fits), (station, TemperatureUnitCheck.Judge(series, latitude, elevationM, TemperatureScale.Fahrenheit).Finding));
        Assert.Equal(
            (station, TemperatureUnitFinding.OtherUnit),
            (station, TemperatureUnitCheck.Judge(Changed(series, 0, series.Count, c => (c * 1.8) + 32)!, latitude, elevationM, TemperatureScale.Celsius).Finding));
        Assert.Equal(
            (station, TemperatureUnitFinding.OtherUnit),
            (station, TemperatureUnitCheck.Judge(Changed(series, 0, series.Count, c => (c - 32) / 1.8)!, latitude, elevationM, TemperatureScale.Fahrenheit).Finding));
    }

    private static void JudgeSlices(DailySeries series, double latitude, double elevationM, int months, Tally tally)
    {
        for (DateOnly from = new(series.FirstDay.Year, series.FirstDay.Month, 1); from.AddMonths(months) <= series.LastDay.AddDays(1); from = from.AddMonths(months == 12 ? 3 : 1))
        {
            int first = Math.Max(0, series.IndexOf(from));
            int last = series.IndexOf(from.AddMonths(months)) - 1;
            TemperatureUnitFinding Judge(Func<double, double> change, TemperatureScale stated) =>
                Changed(series, first, last - first + 1, change) is { } slice ? TemperatureUnitCheck.Judge(slice, latitude, elevationM, stated).Finding : TemperatureUnitFinding.TooShort;

            TemperatureUnitFinding celsius = Judge(c => c, TemperatureScale.Celsius);
            if (celsius == TemperatureUnitFinding.TooShort) continue;
            tally.Slices++;
            if (celsius is TemperatureUnitFinding.OtherUnit or TemperatureUnitFinding.NeitherUnit) tally.TrueCelsiusRefused++;
            if (Judge(c => c, TemperatureScale.Fahrenheit) is TemperatureUnitFinding.OtherUnit or TemperatureUnitFinding.NeitherUnit) tally.TrueFahrenheitRefused++;
            if (Judge(c => (c * 1.8) + 32, TemperatureScale.Celsius) != TemperatureUnitFinding.OtherUnit) tally.FahrenheitNotFound++;
            if (Judge(c => (c - 32) / 1.8, TemperatureScale.Fahrenheit) != TemperatureUnitFinding.OtherUnit) tally.CelsiusNotFound++;
        }
    }

    private static DailySeries? Changed(DailySeries series, int first, int count, Func<double, double> change)
    {
        DailySeriesBuilder builder = new();
        for (int i = first; i < first + count; i++)
        {
            if (double.IsNaN(series.MinimumAirC[i] + series.MaximumAirC[i])) continue;
            builder.Put(series.DayAt(i), WeatherVariable.MinimumAirC, change(series.MinimumAirC[i]));
            builder.Put(series.DayAt(i), WeatherVariable.MaximumAirC, change(series.MaximumAirC[i]));
        }

        return builder.Build();
    }

    // Mean 10 °C, warmest in July at 22 °C, coldest at −2 °C: an invented climate of 45° N.
    private static string SmoothYear(FileTemperatureUnit unit, int year = 2023)
    {
        string Write(double celsius) => (unit == FileTemperatureUnit.Celsius ? celsius : (celsius * 1.8) + 32).ToString("0.0", CultureInfo.InvariantCulture);
        IEnumerable<DateOnly> days = Enumerable.Range(0, 365).Select(i => new DateOnly(year, 1, 1).AddDays(i));
        return "date,tmin,tmax,rain\n" + string.Concat(days.Select(day =>
        {
            double mean = 10 - (12 * Math.Cos(2 * Math.PI * (day.DayOfYear - 20) / 365));
            return $"{day:yyyy-MM-dd},{Write(mean - 6)},{Write(mean + 6)},0\n";
        }));
    }

    private Task<FeedReading> ReadAsync(FeedDefinition definition, double latitude) =>
        FeedFactory.Create(definition, folder.Root, folder.Clock).ReadAsync(FeedFolder.SiteAt(latitude), new DateOnly(2025, 12, 31), TestContext.Current.CancellationToken);

    private sealed class Tally
    {
        public int Slices { get; set; }

        public int TrueCelsiusRefused { get; set; }

        public int TrueFahrenheitRefused { get; set; }

        public int FahrenheitNotFound { get; set; }

        public int CelsiusNotFound { get; set; }

        public override string ToString() =>
            $"{Slices} slices; doubted though right: {TrueCelsiusRefused} as °C, {TrueFahrenheitRefused} as °F; not found: {FahrenheitNotFound} °F as °C, {CelsiusNotFound} °C as °F";
    }
}
