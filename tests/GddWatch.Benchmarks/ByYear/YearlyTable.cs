using System.Buffers.Text;
using System.Globalization;
using System.Text;

namespace GddWatch.Benchmarks.ByYear;

/// <summary>An invented table in the layout of GHCN-Daily by year: 20 million lines, 1,390 stations, the same bytes every time.</summary>
internal static class YearlyTable
{
    public const int Stations = 1390;
    public const int Days = 3597;
    public const long Rows = (long)Stations * Days * 4;
    public static readonly DateOnly FirstDay = new(2011, 1, 1);

    private const int Seed = 20_260_315;

    public static string StationAt(int place) => string.Create(CultureInfo.InvariantCulture, $"USW000{10_000 + place:00000}");

    /// <summary>Writes the table by date, as the archive's own files are, unless it is there.</summary>
    public static void WriteByDate(string path)
    {
        if (File.Exists(path)) return;
        Console.WriteLine($"Writing {path} ...");
        Random chance = new(Seed);
        byte[][] stations = [.. Enumerable.Range(0, Stations).Select(place => Encoding.ASCII.GetBytes(StationAt(place)))];
        byte[] line = new byte[64];
        using (FileStream file = new(path + ".part", FileMode.Create, FileAccess.Write, FileShare.None, 1 << 20))
        {
            for (int day = 0; day < Days; day++)
            {
                byte[] date = Encoding.ASCII.GetBytes(FirstDay.AddDays(day).ToString("yyyyMMdd", CultureInfo.InvariantCulture));
                int season = (int)(-130 * Math.Cos(2 * Math.PI * day / 365.25));
                for (int station = 0; station < Stations; station++)
                {
                    int maximum = 180 + season + chance.Next(-80, 81);
                    file.Write(line, 0, Line(line, stations[station], date, "TMAX"u8, maximum, chance));
                    file.Write(line, 0, Line(line, stations[station], date, "TMIN"u8, maximum - chance.Next(10, 200), chance));
                    file.Write(line, 0, Line(line, stations[station], date, "PRCP"u8, Math.Max(0, chance.Next(-400, 300)), chance));
                    // Half of the stations have an element that nobody reads.
                    file.Write(line, 0, Line(line, stations[station], date, station % 2 == 0 ? "SNWD"u8 : "TOBS"u8, 0, chance));
                }
            }
        }

        File.Move(path + ".part", path);
    }

    /// <summary>Writes the same lines in an order by chance, unless they are there.</summary>
    public static void WriteShuffled(string byDate, string path)
    {
        if (File.Exists(path)) return;
        Console.WriteLine($"Writing {path} ...");
        byte[] text = File.ReadAllBytes(byDate);
        int[] starts = new int[Rows];
        for (int i = 0, at = 0; i < starts.Length; i++)
        {
            starts[i] = at;
            at += text.AsSpan(at).IndexOf((byte)'\n') + 1;
        }

        new Random(Seed).Shuffle(starts);
        using (FileStream file = new(path + ".part", FileMode.Create, FileAccess.Write, FileShare.None, 1 << 20))
        {
            foreach (int start in starts) file.Write(text.AsSpan(start, text.AsSpan(start).IndexOf((byte)'\n') + 1));
        }

        File.Move(path + ".part", path);
    }

    private static int Line(byte[] line, byte[] station, byte[] date, ReadOnlySpan<byte> element, int value, Random chance)
    {
        station.CopyTo(line, 0);
        line[11] = (byte)',';
        date.CopyTo(line, 12);
        line[20] = (byte)',';
        element.CopyTo(line.AsSpan(21));
        line[25] = (byte)',';
        Utf8Formatter.TryFormat(value, line.AsSpan(26), out int digits);
        // One value of 500 failed the archive's quality control.
        ReadOnlySpan<byte> flags = chance.Next(500) == 0 ? ",,I,W,2400\n"u8 : ",,,W,2400\n"u8;
        flags.CopyTo(line.AsSpan(26 + digits));
        return 26 + digits + flags.Length;
    }
}
