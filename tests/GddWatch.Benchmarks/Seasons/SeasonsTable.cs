using System.Buffers.Text;
using System.Globalization;
using System.Text;

namespace GddWatch.Benchmarks.Seasons;

/// <summary>
/// Invented weather of many stations over 30 years as one file in the layout of GHCN-Daily by year, its lines in an order by chance, and a configuration that watches all of
/// them. The same bytes every time.
/// <para>Each station has a yearly course by its latitude, spells of weather that last some days (an autoregression of the first order) and that stations of one
/// region share for the most part, dry and wet days, values that failed the archive's quality control, and holes.</para>
/// </summary>
internal static class SeasonsTable
{
    public const int Years = 30;
    public static readonly DateOnly FirstDay = new(1995, 1, 1);

    private const int Seed = 20_261_127;
    private const double Persistence = 0.7;
    private const int RegionsAcross = 8;

    public static string StationAt(int place) => string.Create(CultureInfo.InvariantCulture, $"USW{place + 1:00000000}");

    public static double LatitudeAt(int place) => Math.Round(30 + (18 * Share(place, 0.754877666)), 3);

    public static double LongitudeAt(int place) => Math.Round(-120 + (45 * Share(place, 0.569840291)), 3);

    /// <summary>Writes the file and the configuration beside it, unless they are there. Gives the file's path.</summary>
    public static string Write(string folder, int stations, string treatments)
    {
        string path = Path.Combine(folder, $"weather-{stations}.csv");
        WriteConfiguration(Path.Combine(folder, $"config-{stations}"), Path.GetFileName(path), stations, treatments);
        if (File.Exists(path)) return path;
        Console.WriteLine($"Writing {path} ...");
        (byte[] text, List<int> starts) = Lines(stations);
        int[] order = [.. starts];
        new Random(Seed).Shuffle(order);
        using (FileStream file = new(path + ".part", FileMode.Create, FileAccess.Write, FileShare.None, 1 << 20))
        {
            foreach (int start in order) file.Write(text.AsSpan(start, text.AsSpan(start).IndexOf((byte)'\n') + 1));
        }

        File.Move(path + ".part", path);
        return path;
    }

    private static void WriteConfiguration(string folder, string file, int stations, string treatments)
    {
        Directory.CreateDirectory(folder);
        File.Copy(treatments, Path.Combine(folder, "treatments.yaml"), overwrite: true);
        StringBuilder text = new("region:\n  name: Invented Plains\n  time-zone: America/Chicago\n  units: us\n  remark: Everything here is invented, for measuring alone.\nsites:\n");
        for (int place = 0; place < stations; place++)
        {
            double latitude = LatitudeAt(place);
            string turf = latitude >= 37 ? "cool-season" : "warm-season";
            text.Append(CultureInfo.InvariantCulture, $"  - {{ id: s{place:0000}, name: Station {place:0000}, latitude: {latitude}, longitude: {LongitudeAt(place)}, elevation: {100 + (place % 7 * 50)} m, ");
            text.Append(CultureInfo.InvariantCulture, $"turf: [{turf}], soil: silt loam, history: [grubs], feeds: [{{ archive: ghcn-daily-by-year-csv, files: {file}, station: {StationAt(place)} }}] }}\n");
        }

        text.Append("recipients: []\noperator: { address: operator@example.org }\n");
        File.WriteAllText(Path.Combine(folder, "region.yaml"), text.ToString());
    }

    private static (byte[] Text, List<int> Starts) Lines(int stations)
    {
        Random chance = new(Seed);
        double[] own = new double[stations];
        double[] shared = new double[RegionsAcross * RegionsAcross];
        int days = FirstDay.AddYears(Years).DayNumber - FirstDay.DayNumber;
        byte[] text = new byte[checked(stations * days * 3 * 40)];
        List<int> starts = new(stations * days * 3);
        byte[][] names = [.. Enumerable.Range(0, stations).Select(place => Encoding.ASCII.GetBytes(StationAt(place)))];
        int[] holeUntil = new int[stations];
        int at = 0;
        for (int day = 0; day < days; day++)
        {
            byte[] date = Encoding.ASCII.GetBytes(FirstDay.AddDays(day).ToString("yyyyMMdd", CultureInfo.InvariantCulture));
            for (int region = 0; region < shared.Length; region++) shared[region] = (Persistence * shared[region]) + Normal(chance, 2.4);
            for (int place = 0; place < stations; place++)
            {
                own[place] = (Persistence * own[place]) + Normal(chance, 0.8);
                if (chance.Next(3000) == 0) holeUntil[place] = day + chance.Next(2, 12);
                double latitude = LatitudeAt(place);
                double middle = 29 - (0.62 * (latitude - 25)) - ((6 + (0.34 * (latitude - 25))) * Math.Cos(2 * Math.PI * (day - 22) / 365.25)) + own[place] + shared[RegionOf(place)];
                double half = 2.5 + (6 * chance.NextDouble());
                double rain = chance.Next(3) == 0 ? -7 * Math.Log(1 - chance.NextDouble()) : 0;
                if (day < holeUntil[place]) continue;
                if (chance.Next(400) != 0) Line("TMAX"u8, (int)Math.Round((middle + half) * 10));
                if (chance.Next(400) != 0) Line("TMIN"u8, (int)Math.Round((middle - half) * 10));
                Line("PRCP"u8, (int)Math.Round(rain * 10));

                void Line(ReadOnlySpan<byte> element, int value)
                {
                    starts.Add(at);
                    at += WriteLine(text.AsSpan(at), names[place], date, element, value, chance.Next(500) == 0);
                }
            }
        }

        return (text, starts);
    }

    private static int WriteLine(Span<byte> line, byte[] station, byte[] date, ReadOnlySpan<byte> element, int value, bool hasFailed)
    {
        station.CopyTo(line);
        line[11] = (byte)',';
        date.CopyTo(line[12..]);
        line[20] = (byte)',';
        element.CopyTo(line[21..]);
        line[25] = (byte)',';
        Utf8Formatter.TryFormat(value, line[26..], out int digits);
        ReadOnlySpan<byte> rest = hasFailed ? ",,I,W,\n"u8 : ",,,W,\n"u8;
        rest.CopyTo(line[(26 + digits)..]);
        return 26 + digits + rest.Length;
    }

    private static int RegionOf(int place) =>
        ((int)((LatitudeAt(place) - 30) / 18.001 * RegionsAcross) * RegionsAcross) + (int)((LongitudeAt(place) + 120) / 45.001 * RegionsAcross);

    // Spread evenly without any pattern that chance would make (an additive recurrence).
    private static double Share(int place, double step) => (0.5 + (step * place)) % 1;

    private static double Normal(Random chance, double deviation) =>
        deviation * Math.Sqrt(-2 * Math.Log(1 - chance.NextDouble())) * Math.Cos(2 * Math.PI * chance.NextDouble());
}
