using System.Globalization;
using System.Text;
using GddWatch.Agronomy.Weather;

namespace GddWatch.Benchmarks.Pass;

/// <summary>
/// An invented region of many sites, each with weather from an open service, and that weather: a yearly course by latitude, spells that last some days and that sites near each other share for the
/// most part, dry and wet days. The same every time.
/// </summary>
internal sealed class PassRegion(int sites, DateOnly first, DateOnly last)
{
    public const string Feed = "open-meteo";

    private const int Seed = 20_261_128;
    private const double Persistence = 0.7;
    private const int SitesOfACounty = 50;

    /// <summary>Its sites' ids.</summary>
    public IEnumerable<string> Ids => Enumerable.Range(0, sites).Select(IdOf);

    /// <summary>Writes its configuration; one adviser is told of everything.</summary>
    public void WriteConfiguration(string folder, string sample)
    {
        Directory.CreateDirectory(folder);
        File.Copy(Path.Combine(sample, "treatments.yaml"), Path.Combine(folder, "treatments.yaml"), overwrite: true);
        StringBuilder text = new("region:\n  name: Invented Plains\n  time-zone: America/Chicago\n  units: us\n  remark: Everything here is invented, for measuring alone.\nsites:\n");
        for (int place = 0; place < sites; place++)
        {
            string turf = LatitudeAt(place) >= 37 ? "cool-season" : "warm-season";
            text.Append(CultureInfo.InvariantCulture, $"  - {{ id: {IdOf(place)}, name: Lawn {place:00000}, latitude: {LatitudeAt(place)}, longitude: {LongitudeAt(place)}, elevation: {100 + (place % 7 * 50)} m, ");
            text.Append(CultureInfo.InvariantCulture, $"turf: [{turf}], soil: silt loam, history: [grubs], feeds: [{{ service: {Feed} }}] }}\n");
        }

        text.Append("recipients:\n  - { address: adviser@example.org, name: The adviser, sites: all, treatments: all }\noperator: { address: operator@example.org }\n");
        File.WriteAllText(Path.Combine(folder, "region.yaml"), text.ToString());
    }

    /// <summary>The weather of each site, in their order.</summary>
    public IEnumerable<DailySeries> Weather()
    {
        int days = last.DayNumber - first.DayNumber + 1;
        double[] shared = [];
        for (int place = 0; place < sites; place++)
        {
            if (place % SitesOfACounty == 0) shared = Spells(new Random(Seed + (place / SitesOfACounty)), days, 2.4);
            var chance = new Random(Seed + 1_000_000 + place);
            double[] own = Spells(chance, days, 0.8);
            double[] minimum = new double[days], maximum = new double[days], rain = new double[days];
            double latitude = LatitudeAt(place);
            for (int day = 0; day < days; day++)
            {
                double yearly = Math.Cos(2 * Math.PI * (first.AddDays(day).DayOfYear - 22) / 365.25);
                double middle = 29 - (0.62 * (latitude - 25)) - ((6 + (0.34 * (latitude - 25))) * yearly) + own[day] + shared[day];
                double half = 2.5 + (6 * chance.NextDouble());
                minimum[day] = Math.Round(middle - half, 1);
                maximum[day] = Math.Round(middle + half, 1);
                rain[day] = chance.Next(3) == 0 ? Math.Round(-7 * Math.Log(1 - chance.NextDouble()), 1) : 0;
            }

            var builder = new DailySeriesBuilder(first, last);
            builder.Put(first, WeatherVariable.MinimumAirC, minimum);
            builder.Put(first, WeatherVariable.MaximumAirC, maximum);
            builder.Put(first, WeatherVariable.PrecipitationMm, rain);
            yield return builder.Build()!;
        }
    }

    private static string IdOf(int place) => string.Create(CultureInfo.InvariantCulture, $"s{place:00000}");

    // Sites of a county lie within some 60 km; counties are spread evenly without any pattern that chance would make (an additive recurrence).
    private static double LatitudeAt(int place) => Math.Round(30 + (18 * Share(place / SitesOfACounty, 0.754877666)) + (0.5 * Share(place, 0.754877666)), 3);

    private static double LongitudeAt(int place) => Math.Round(-120 + (45 * Share(place / SitesOfACounty, 0.569840291)) + (0.5 * Share(place, 0.569840291)), 3);

    private static double Share(int place, double step) => (0.5 + (step * place)) % 1;

    private static double[] Spells(Random chance, int days, double deviation)
    {
        var spells = new double[days];
        double now = 0;
        for (int day = 0; day < days; day++) spells[day] = now = (Persistence * now) + (deviation * Math.Sqrt(-2 * Math.Log(1 - chance.NextDouble())) * Math.Cos(2 * Math.PI * chance.NextDouble()));
        return spells;
    }
}
