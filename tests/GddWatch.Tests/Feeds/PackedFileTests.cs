using System.IO.Compression;
using System.Text;
using GddWatch.Feeds;
using GddWatch.Feeds.Faults;
using Microsoft.Extensions.Time.Testing;
using Xunit;

namespace GddWatch.Tests.Feeds;

/// <summary>CSV files packed as .gz and .zip: whole ones, broken ones, and ones made to fill the machine.</summary>
public sealed class PackedFileTests : IDisposable
{
    private const string Text = "date,tmin,tmax,rain\n2024-05-01,1,11,0\n2024-05-02,2,12,0\n";

    private readonly FeedFolder folder = new();

    public void Dispose() => folder.Dispose();

    [Fact]
    public async Task Packed_files_give_the_same_days_as_plain_ones()
    {
        folder.With(Gzip(Text), "a.csv.gz").With(Zip(("inner/a.csv", Text)), "a.zip").With(Text, "a.csv");

        foreach (string name in new[] { "a.csv", "a.csv.gz", "a.zip" })
        {
            FeedReading reading = await folder.ReadAsync(FeedFolder.Csv(name));
            Assert.Empty(reading.Telling());
            Assert.Equal((1.0, 12.0), (reading.At("2024-05-01"), reading.MaximumAt("2024-05-02")));
        }
    }

    [Fact]
    public async Task A_folder_takes_plain_and_packed_files_together()
    {
        folder.With("date,tmin,tmax,rain\n2024-05-03,3,13,0\n", "days/a.csv").With(Gzip(Text), "days/b.csv.gz").With("not weather", "days/readme.txt");

        FeedReading reading = await folder.ReadAsync(FeedFolder.Csv("days/"));

        Assert.Equal((1.0, 3.0), (reading.At("2024-05-01"), reading.At("2024-05-03")));
    }

    [Fact]
    public async Task A_zip_with_a_readme_beside_one_table_is_read()
    {
        folder.With(Zip(("readme.txt", "hello"), ("a.csv", Text)), "a.zip");

        Assert.Equal(1.0, (await folder.ReadAsync(FeedFolder.Csv("a.zip"))).At("2024-05-01"));
    }

    [Fact]
    public async Task A_zip_with_several_tables_is_refused_with_their_names()
    {
        folder.With(Zip(("a.csv", Text), ("b.csv", Text)), "a.zip");

        Fault fault = (await folder.ReadAsync(FeedFolder.Csv("a.zip"))).OnlyFault();

        Assert.Equal((FaultSeverity.Refused, "a.zip"), (fault.Severity, fault.File));
        Assert.Contains("holds 2 files, and which one is meant cannot be known: a.csv, b.csv", fault.Problem, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_zip_with_nothing_in_it_is_refused()
    {
        folder.With(Zip(), "a.zip");

        Assert.Contains("holds no file", (await folder.ReadAsync(FeedFolder.Csv("a.zip"))).OnlyFault().Problem, StringComparison.Ordinal);
    }

    public static TheoryData<string, byte[]> Broken => new()
    {
        { "a.csv.gz", Encoding.UTF8.GetBytes(Text) },
        { "a.csv.gz", Flipped(Gzip(Text)) },
        { "a.zip", Encoding.UTF8.GetBytes(Text) },
        { "a.zip", Zip(("a.csv", Text))[..^30] },
        { "a.zip", [0x50, 0x4B, 3, 4, 0, 0] },
    };

    [Theory]
    [MemberData(nameof(Broken))]
    public async Task A_broken_packed_file_is_refused_in_a_sentence(string name, byte[] bytes)
    {
        Fault fault = (await folder.With(bytes, name).ReadAsync(FeedFolder.Csv(name))).OnlyFault();

        Assert.Equal(FaultSeverity.Refused, fault.Severity);
        Assert.Contains("cannot be unpacked: it is damaged, cut short", fault.Problem, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_packed_file_of_no_bytes_is_empty() =>
        Assert.Contains("empty", (await folder.With([], "a.csv.gz").ReadAsync(FeedFolder.Csv("a.csv.gz"))).OnlyFault().Problem, StringComparison.Ordinal);

    [Fact]
    public async Task A_gz_that_was_cut_short_keeps_its_whole_lines_and_says_so()
    {
        string text = LongText(2000);
        byte[] whole = Gzip(text);
        folder.With(whole[..(whole.Length / 2)], "a.csv.gz");

        FeedReading reading = await folder.ReadAsync(FeedFolder.Csv("a.csv.gz"));

        Assert.True(reading.Series!.Count is > 500 and < 1900, $"{reading.Series.Count} days");
        Fault fault = Assert.Single(reading.Telling(), each => each.Severity == FaultSeverity.LeftOut);
        Assert.Contains("ends in the middle of a line: it was cut short", fault.Problem, StringComparison.Ordinal);
        Assert.Equal(reading.Series.Count + 2, fault.Line);
    }

    [Fact]
    public async Task A_gz_that_lacks_only_its_last_bytes_is_used_with_a_remark()
    {
        byte[] whole = Gzip(Text);

        FeedReading reading = await folder.With(whole[..^6], "a.csv.gz").ReadAsync(FeedFolder.Csv("a.csv.gz"));

        Assert.Equal(2.0, reading.At("2024-05-02"));
        Assert.Contains("days may be missing at the end", Assert.Single(reading.Telling(), each => each.Severity == FaultSeverity.Remark).Problem, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_packed_file_that_was_changed_just_now_is_said_to_be_still_being_written()
    {
        folder.With(Zip(("a.csv", Text))[..^30], "a.zip");
        DateTimeOffset changed = new(2024, 5, 2, 12, 0, 0, TimeSpan.Zero);
        File.SetLastWriteTimeUtc(Path.Combine(folder.Root, "a.zip"), changed.UtcDateTime);

        FeedReading reading = await folder.ReadAsync(FeedFolder.Csv("a.zip"), clock: new FakeTimeProvider(changed.AddSeconds(5)));

        Assert.Contains("probably still being written", reading.OnlyFault().Problem, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_small_file_that_becomes_enormous_is_refused_without_filling_the_memory()
    {
        // A gigabyte of blanks and more, in about a megabyte.
        using MemoryStream packed = new();
        await using (GZipStream gzip = new(packed, CompressionLevel.Fastest, leaveOpen: true))
        {
            byte[] blanks = new byte[1 << 20];
            Array.Fill(blanks, (byte)' ');
            for (int i = 0; i < 960; i++) gzip.Write(blanks);
        }

        Fault fault = (await folder.With(packed.ToArray(), "a.csv.gz").ReadAsync(FeedFolder.Csv("a.csv.gz"))).OnlyFault();

        Assert.Contains("larger than 1,000 MB when unpacked", fault.Problem, StringComparison.Ordinal);
    }

    internal static byte[] Gzip(string text)
    {
        using MemoryStream packed = new();
        using (GZipStream gzip = new(packed, CompressionLevel.Optimal, leaveOpen: true)) gzip.Write(Encoding.UTF8.GetBytes(text));
        return packed.ToArray();
    }

    internal static byte[] Zip(params (string Name, string Text)[] files)
    {
        using MemoryStream packed = new();
        using (ZipArchive zip = new(packed, ZipArchiveMode.Create, leaveOpen: true))
        {
            foreach ((string name, string text) in files)
            {
                using Stream entry = zip.CreateEntry(name).Open();
                entry.Write(Encoding.UTF8.GetBytes(text));
            }
        }

        return packed.ToArray();
    }

    private static string LongText(int days)
    {
        StringBuilder text = new("date,tmin,tmax,rain\n");
        DateOnly first = new(2015, 1, 1);
        for (int i = 0; i < days; i++) text.Append($"{first.AddDays(i):yyyy-MM-dd},{i * 7919 % 13},{20 + (i * 104729 % 11)},0\n");
        return text.ToString();
    }

    private static byte[] Flipped(byte[] bytes)
    {
        bytes[^6] ^= 0x55;
        return bytes;
    }
}
