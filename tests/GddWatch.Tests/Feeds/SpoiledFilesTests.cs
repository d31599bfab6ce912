using System.Globalization;
using System.Text;
using CsCheck;
using GddWatch.Agronomy.Weather;
using GddWatch.Feeds;
using GddWatch.Feeds.Archives;
using Xunit;

namespace GddWatch.Tests.Feeds;

/// <summary>
/// Good files of every format, spoiled in every way, always the same ones: nothing is thrown, every fault is a short sentence, and no value comes out that did not stand
/// on a line of that day. The environment variable GDDWATCH_FUZZ_CASES says how many in all.
/// </summary>
public sealed class SpoiledFilesTests(ITestOutputHelper output) : IDisposable
{
    private const int FewCases = 3000;
    private const int Formats = 5;
    private const ulong Seed = 20_260_301;
    private const string ColumnsDate = "yyyyMMdd";

    // What each element of GHCN-Daily is called and how many of its units make one of the record's (readme.txt of GHCN-Daily, section III, SEEN).
    private static readonly Dictionary<WeatherVariable, (string Code, double Scale)> Ghcn = new()
    {
        [WeatherVariable.MaximumAirC] = ("TMAX", 10), [WeatherVariable.MinimumAirC] = ("TMIN", 10), [WeatherVariable.MeanAirC] = ("TAVG", 10),
        [WeatherVariable.PrecipitationMm] = ("PRCP", 10), [WeatherVariable.SnowDepthMm] = ("SNWD", 1),
    };

    // Beginnings of the fields in a line of the US Climate Reference Network, from 0; each has seven characters, radiation eight (readme.txt of CRND0103, MEMORY).
    private static readonly Dictionary<WeatherVariable, (int Start, int Length)> Uscrn = new()
    {
        [WeatherVariable.MaximumAirC] = (38, 7), [WeatherVariable.MinimumAirC] = (46, 7), [WeatherVariable.MeanAirC] = (62, 7), [WeatherVariable.PrecipitationMm] = (70, 7),
        [WeatherVariable.SolarRadiationMJ] = (78, 8), [WeatherVariable.RelativeHumidityPercent] = (129, 7), [WeatherVariable.Soil5CmC] = (177, 7), [WeatherVariable.Soil10CmC] = (185, 7),
    };

    private readonly FeedFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Fact]
    public Task Tables_by_configuration_give_only_what_they_hold() => HoldsAsync(
        1,
        "date,tmin,tmax,rain\n" + Lines(8, i => $"2024-04-{i + 1:00},{Tenths(i)},{Tenths(i + 90)},{(i % 3 == 0 ? "NA" : Tenths(i * 7))}"),
        FeedFolder.Csv(),
        (line, day, _, value) => HasDate(Tokens(line), day, "yyyy-MM-dd") && Tokens(line).Any(token => IsNumber(token, value, 1)));

    [Fact]
    public Task Lines_of_the_climate_network_give_only_what_they_hold() => HoldsAsync(
        2,
        Lines(6, i => $"99999 202405{i + 1:00}  2.622    0.00   45.00 {Tenths(200 + i),7} {Tenths(90 + i),7}    16.0 {Tenths(150 + i),7}     1.5    18.4{i} C    25.4     8.8    16.2    92.5    49.9    70.{i}   0.387   0.413   0.391   0.439   0.471    15.5    15.{i}    14.0    12.8    11.4"),
        new ArchiveFeedDefinition(ArchiveKind.UscrnDaily, "*.csv"),
        (line, day, variable, value) => line.Length >= 192 && HasDate([line.Substring(6, 8)], day, ColumnsDate) && IsNumber(line.Substring(Uscrn[variable].Start, Uscrn[variable].Length), value, 1));

    [Fact]
    public Task Lines_of_fixed_columns_give_only_what_they_hold() => HoldsAsync(
        3,
        Lines(6, i => GhcnLines.DlyLine(new[] { "TMAX", "TMIN", "PRCP" }[i % 3], 3 + (i / 3), 200 - ((i % 3) * 90) + i, other: (9, 77, " I0"))),
        GhcnLines.Dly("*.csv"),
        (line, day, variable, value) =>
            line.Length >= 266 && line[11..17] == day.ToString("yyyyMM", CultureInfo.InvariantCulture) && line[17..21] == Ghcn[variable].Code
            && IsNumber(line.Substring(21 + ((day.Day - 1) * 8), 5), value, Ghcn[variable].Scale));

    [Fact]
    public Task A_station_table_gives_only_what_it_holds() => HoldsAsync(
        4,
        "\"STATION\",\"DATE\",\"LATITUDE\",\"LONGITUDE\",\"ELEVATION\",\"NAME\",\"PRCP\",\"PRCP_ATTRIBUTES\",\"TMAX\",\"TMAX_ATTRIBUTES\",\"TMIN\",\"TMIN_ATTRIBUTES\"\n"
        + Lines(8, i => $"\"{GhcnLines.Station}\",\"2024-04-{i + 1:00}\",\"45.0\",\"0.0\",\"10.0\",\"SOMEWHERE, ZZ US\",\"   {25 + i}\",\",,W\",\"{213 + i}\",\",,W,2400\",\"{17 + i}\",\",,W\""),
        GhcnLines.StationCsv(),
        (line, day, variable, value) => (HasDate(Tokens(line), day, "yyyy-MM-dd") || IsOfTheNextMorning(Tokens(line), day, variable, "yyyy-MM-dd"))
            && Tokens(line).Any(token => IsNumber(token, value, Ghcn[variable].Scale)));

    [Fact]
    public Task A_table_by_year_gives_only_what_it_holds() => HoldsAsync(
        5,
        Lines(24, i => $"{(i % 4 == 3 ? "USW00088888" : GhcnLines.Station)},202404{(i / 4) + 1:00},{new[] { "TMAX", "TMIN", "PRCP", "TMAX" }[i % 4]},{200 - ((i % 4) * 90) + i},,{(i == 13 ? "I" : "")},W,{(i % 2 == 0 ? "2400" : "")}"),
        GhcnLines.ByYear(),
        (line, day, variable, value) =>
        {
            string[] cells = line.Split(',');
            return cells.Length > 3 && cells[0] == GhcnLines.Station && (HasDate([cells[1]], day, ColumnsDate) || IsOfTheNextMorning([cells[1]], day, variable, ColumnsDate))
                && cells[2] == Ghcn[variable].Code && IsNumber(cells[3], value, Ghcn[variable].Scale);
        });

    // A blank before the value is allowed, and takes a line out of the short way; both ways must give the same days and find the same faults.
    [Fact]
    public async Task The_short_way_through_a_line_by_year_gives_the_same_as_the_long_one()
    {
        byte[] good = Encoding.UTF8.GetBytes(Lines(24, i => $"{GhcnLines.Station},202404{(i / 4) + 1:00},{new[] { "TMAX", "TMIN", "PRCP", "TOBS" }[i % 4]},{200 - ((i % 4) * 90) + i},{(i == 5 ? "T" : "")},{(i == 13 ? "I" : "")},W{(i % 3 == 0 ? ",0700" : i % 3 == 1 ? "," : "")}"));
        PCG chance = new(6, Seed);
        int withFaults = 0;
        for (int i = 0; i < 600; i++)
        {
            string spoiled = Encoding.Latin1.GetString(SpoiledFile.Of(good, SpoiledFile.Mutations.Generate(chance, null, out Size _)));
            string blanks = string.Join('\n', spoiled.Split('\n').Select(line => line.Split(',') is { Length: > 3 } cells && cells[0] == GhcnLines.Station ? string.Join(',', [.. cells[..3], " " + cells[3], .. cells[4..]]) : line));
            FeedReading shortWay = await folder.With(Encoding.Latin1.GetBytes(spoiled)).ReadAsync(GhcnLines.ByYear());
            FeedReading longWay = await folder.With(Encoding.Latin1.GetBytes(blanks)).ReadAsync(GhcnLines.ByYear());

            Assert.True(
                shortWay.Faults.Select(fault => (fault.Severity, fault.Line, fault.Column)).SequenceEqual(longWay.Faults.Select(fault => (fault.Severity, fault.Line, fault.Column))),
                $"{string.Join('\n', shortWay.Faults)}\n---\n{string.Join('\n', longWay.Faults)}");
            Assert.Equal((shortWay.Series?.FirstDay, shortWay.Series?.LastDay), (longWay.Series?.FirstDay, longWay.Series?.LastDay));
            foreach (WeatherVariable variable in Enum.GetValues<WeatherVariable>())
            {
                if (shortWay.Series is { } series) Assert.Equal(series.Column(variable).ToArray(), longWay.Series!.Column(variable).ToArray());
            }

            withFaults += longWay.Faults.Any(fault => fault.Line is not null) ? 1 : 0;
        }

        Assert.True(withFaults > 100, $"Only {withFaults} files had faults.");
    }

    private async Task HoldsAsync(uint stream, string good, FeedDefinition definition, Func<string, DateOnly, WeatherVariable, double, bool> stands)
    {
        int cases = int.Parse(Environment.GetEnvironmentVariable("GDDWATCH_FUZZ_CASES") ?? $"{FewCases}", CultureInfo.InvariantCulture) / Formats;
        byte[] goodBytes = Encoding.UTF8.GetBytes(good);
        PCG chance = new(stream, Seed);
        long values = 0;
        for (int i = 0; i < cases; i++)
        {
            byte[] spoiled = SpoiledFile.Of(goodBytes, SpoiledFile.Mutations.Generate(chance, null, out Size _));
            try
            {
                FeedReading reading = await folder.With(spoiled).ReadAsync(definition);
                values += AssertAllStand(reading.Series, spoiled, stands);
                Assert.All(reading.Faults, fault => Assert.True(fault.Problem.Length > 0 && fault.Accepted.Length > 0 && fault.ToString().Length < 3500, fault.ToString()));
                Assert.True(reading.Series is not null || reading.IsRefused, "No series, and nobody was told that there is none.");
            }
            catch (Exception failure)
            {
                throw new InvalidOperationException($"Case {i} of {cases}: {Convert.ToBase64String(spoiled)}", failure);
            }
        }

        output.WriteLine($"{cases} cases, {values} values.");
        Assert.True(values > cases, $"Only {values} values came out of {cases} files.");
    }

    private static int AssertAllStand(DailySeries? series, byte[] file, Func<string, DateOnly, WeatherVariable, double, bool> stands)
    {
        if (series is null) return 0;
        string[] lines = TextOf(file).Split(['\n', '\r']);
        int values = 0;
        foreach (WeatherVariable variable in Enum.GetValues<WeatherVariable>())
        {
            ReadOnlySpan<double> column = series.Column(variable);
            for (int i = 0; i < column.Length; i++)
            {
                if (double.IsNaN(column[i])) continue;
                values++;
                (DateOnly day, double value) = (series.DayAt(i), column[i]);
                if (!Array.Exists(lines, line => stands(line, day, variable, value))) Assert.Fail($"{variable} of {day:yyyy-MM-dd} is {value}, which no line says.");
            }
        }

        return values;
    }

    // A character a byte, so that columns stay where they are whatever the bytes mean.
    private static string TextOf(byte[] file)
    {
        if (file.AsSpan().StartsWith((ReadOnlySpan<byte>)[0xFF, 0xFE])) file = Encoding.Convert(Encoding.Unicode, Encoding.UTF8, file[2..]);
        else if (file.AsSpan().StartsWith((ReadOnlySpan<byte>)[0xFE, 0xFF])) file = Encoding.Convert(Encoding.BigEndianUnicode, Encoding.UTF8, file[2..]);
        else if (file.AsSpan().StartsWith((ReadOnlySpan<byte>)[0xEF, 0xBB, 0xBF])) file = file[3..];
        return Encoding.Latin1.GetString(file);
    }

    private static string[] Tokens(string line) => line.Split([',', '"']);

    private static bool HasDate(string[] tokens, DateOnly day, string format) =>
        Array.Exists(tokens, token => token.Trim() == day.ToString(format, CultureInfo.InvariantCulture));

    private static bool IsOfTheNextMorning(string[] tokens, DateOnly day, WeatherVariable variable, string format) =>
        variable == WeatherVariable.MaximumAirC && HasDate(tokens, day.AddDays(1), format);

    private static bool IsNumber(string token, double value, double scale) =>
        double.TryParse(token.Trim(), NumberStyles.Float, CultureInfo.InvariantCulture, out double number) && number / scale == value;

    private static string Tenths(int tenths) => (tenths / 10.0).ToString("0.0", CultureInfo.InvariantCulture);

    private static string Lines(int count, Func<int, string> line) => string.Concat(Enumerable.Range(0, count).Select(i => line(i) + "\n"));
}
