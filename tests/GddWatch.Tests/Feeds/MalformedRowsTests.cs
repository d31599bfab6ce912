using System.Globalization;
using CsCheck;
using GddWatch.Agronomy.Weather;
using GddWatch.Feeds;
using GddWatch.Feeds.Faults;
using Xunit;

namespace GddWatch.Tests.Feeds;

/// <summary>Thousands of generated files of good and spoiled lines, always the same ones.</summary>
public sealed class MalformedRowsTests : IDisposable
{
    private const ulong Seed = 20_240_501;
    private static readonly DateOnly First = new(2020, 1, 1);

    private static readonly string[] Spoiled =
    [
        "", ",", ",,,", "\"", "\"\"\"", "2020-01-05,1", "2020-01-05,1,2,3,4", "2020-02-30,1,2,3", "9999-12-31,1,2,3", "2020-01-05,NaN,1,0", "2020-01-05,1,0,0",
        "2020-01-05,1e400,2,0", "2020-01-05,-999,2,0", "date,tmin,tmax,rain", "\uFEFF2020-01-01,7,8,9", new string('9', 20_000),
    ];

    private static readonly Gen<string> Junk = Gen.OneOf(
        Gen.String[Gen.Char["0123456789-+.,;eE\"' \t#xNaN°\0é"], 0, 30],
        Gen.Int[0, Spoiled.Length - 1].Select(i => Spoiled[i]));

    // A line is a good day, or junk that replaces it.
    private static readonly Gen<Line[]> Files =
        Gen.Select(Gen.Bool, Gen.Int[-300, 100], Gen.Int[0, 300], Gen.Int[0, 500], Junk, (isGood, low, range, rain, junk) => new Line(isGood, low / 10.0, (low + range) / 10.0, rain / 10.0, junk)).Array[1, 30];

    private readonly FeedFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Fact]
    public void Whatever_stands_between_good_lines_nothing_is_thrown_or_invented_and_every_good_line_is_kept() =>
        ForEach(
            Files,
            times: 3000,
            lines =>
            {
                string text = "date,tmin,tmax,rain\n" + string.Concat(lines.Select((line, i) => (line.IsGood ? line.Text(First.AddDays(i * 40)) : line.Junk) + "\n"));
                FeedReading reading = folder.With(text).ReadAsync().GetAwaiter().GetResult();

                for (int i = 0; i < lines.Length; i++)
                {
                    if (lines[i].IsGood && !HasOtherRowOf(First.AddDays(i * 40), lines)) AssertKept(reading, First.AddDays(i * 40), lines[i]);
                }

                AssertNothingInvented(reading, text);
                Assert.True(!lines.Any(line => line.IsGood) || reading.Series is not null);
                Assert.All(reading.Faults, fault => Assert.True(fault.Problem.Length > 0 && fault.Accepted.Length > 0 && fault.ToString().Length < 1500, fault.ToString()));
            });

    [Fact]
    public void Whatever_bytes_a_file_holds_nothing_is_thrown() =>
        ForEach(
            Gen.Byte.Array[0, 400],
            times: 1000,
            bytes =>
            {
                FeedReading bare = folder.With(bytes).ReadAsync().GetAwaiter().GetResult();
                Assert.True(bare.Series is null && bare.IsRefused);
                FeedReading underHeader = folder.With([.. "date,tmin,tmax,rain\n2020-01-01,1,2,3\n"u8, .. bytes]).ReadAsync().GetAwaiter().GetResult();
                Assert.Equal(1.0, underHeader.At("2020-01-01"));
            });

    // The library's own sampling begins at a seed but goes on by chance; here each run tries the same cases.
    private static void ForEach<T>(Gen<T> cases, int times, Action<T> holds)
    {
        PCG chance = new(1, Seed);
        for (int i = 0; i < times; i++)
        {
            T one = cases.Generate(chance, null, out Size _);
            try
            {
                holds(one);
            }
            catch (Exception failure)
            {
                throw new InvalidOperationException($"Case {i} of {times}: {(one is Line[] lines ? string.Join("\n", lines.AsEnumerable()) : one)}", failure);
            }
        }
    }

    private static void AssertKept(FeedReading reading, DateOnly day, Line line)
    {
        string text = day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
        Assert.Equal((line.MinimumC, line.MaximumC, line.RainMm), (reading.At(text), reading.MaximumAt(text), reading.RainAt(text)));
    }

    // Junk can be a line of a good day's date; then the first of them stands, which other tests hold.
    private static bool HasOtherRowOf(DateOnly day, Line[] lines) =>
        lines.Any(line => !line.IsGood && line.Junk.Contains(day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture), StringComparison.Ordinal));

    private static void AssertNothingInvented(FeedReading reading, string text)
    {
        if (reading.Series is not { } series) return;
        HashSet<double> written = [.. text.Split(',', '\n', '"').Select(cell => double.TryParse(cell, CultureInfo.InvariantCulture, out double value) ? value : double.NaN)];
        foreach (WeatherVariable variable in Enum.GetValues<WeatherVariable>())
        {
            foreach (double value in series.Column(variable))
            {
                if (!double.IsNaN(value)) Assert.Contains(value, written);
            }
        }
    }

    private sealed record Line(bool IsGood, double MinimumC, double MaximumC, double RainMm, string Junk)
    {
        public string Text(DateOnly day) => string.Create(CultureInfo.InvariantCulture, $"{day:yyyy-MM-dd},{MinimumC},{MaximumC},{RainMm}");
    }
}
