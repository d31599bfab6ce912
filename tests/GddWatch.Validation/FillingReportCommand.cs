using System.Diagnostics;
using System.Globalization;
using GddWatch.Agronomy.Weather;
using GddWatch.Agronomy.Weather.Filling;
using GddWatch.Validation.Filling;
using GddWatch.Validation.Weather;

namespace GddWatch.Validation;

/// <summary>
/// Makes holes in measured series, fills them, and prints how far each rung's fillings are from what was measured, and how fast a departure from the usual fades.
/// </summary>
internal static class FillingReportCommand
{
    private const int Seed = 20240521;
    private const int Rounds = 5;
    private const double FarthestNeighbourKm = 300;
    private const double EarthRadiusKm = 6371;

    /// <summary>Series cut here are too short for a climatology, so that the last known day has to stand in.</summary>
    private static readonly DateOnly ShortUntil = new(2018, 12, 31);

    /// <summary>From here on ten earlier years are known.</summary>
    private static readonly DateOnly LongFrom = new(2020, 1, 10);

    public static void Run(string weatherFolder, TextWriter output)
    {
        string folder = Path.Combine(weatherFolder, "uscrn-daily");
        MeasuredStation[] stations = [.. UscrnStations.Read(folder).Where(station => station.IsHumid)];
        Dictionary<string, (double Latitude, double Longitude)> places = Places(folder);
        output.WriteLine(FormattableString.Invariant($"{stations.Length} humid stations, seed {Seed}, {Rounds} rounds; a hole is both temperatures missing, about one every 60 days"));
        Fading(stations, output);

        var random = new Random(Seed);
        FillingErrors own = new(), near = new(), nearByStation = new(), nearByStated = new();
        foreach (MeasuredStation station in stations)
        {
            FillingNeighbour[] neighbours = [.. stations
                .Where(other => other != station && DistanceKm(places[station.Name], places[other.Name]) <= FarthestNeighbourKm)
                .OrderBy(other => DistanceKm(places[station.Name], places[other.Name]))
                .Select(other => new FillingNeighbour(other.Name, other.Series))];
            string nearest = neighbours.Length == 0 ? "" : FormattableString.Invariant($"{station.Name} from {neighbours[0].Name}, {DistanceKm(places[station.Name], places[neighbours[0].Name]):000} km");
            for (int hole = 1; hole <= SiteClimatology.LongestHoleDays * Rounds; hole++)
            {
                int days = (hole - 1) % SiteClimatology.LongestHoleDays + 1;
                AddOwn(own, KnockedOut.Of(station.Series, days, LongFrom, random));
                AddOwn(own, KnockedOut.Of(station.Series.Until(ShortUntil)!, days, station.Series.FirstDay, random));
                if (neighbours.Length == 0) continue;
                KnockedOut holed = KnockedOut.Of(station.Series, days, station.Series.FirstDay, random);
                foreach ((FilledValue filling, int _, double difference) in Compared(holed, neighbours).Where(each => each.Filling.Rung == FillingRung.NeighbouringSite))
                {
                    near.Add($"NeighbouringSite, hole of {holed.HoleDays:00} days, {filling.Variable}", difference, filling.ErrorC);
                    nearByStation.Add(nearest, difference, filling.ErrorC);
                    nearByStated.Add(FormattableString.Invariant($"stated below {Math.Ceiling(filling.ErrorC / 0.25) * 0.25:0.00} °C"), difference, filling.ErrorC);
                }
            }
        }

        output.WriteLine("\nFrom the site's own days");
        own.Print(output);
        output.WriteLine("\nFrom a neighbouring site, by the length of the hole; by the station and its nearest neighbour (the most alike one is taken); by the error that is stated");
        near.Print(output);
        nearByStation.Print(output);
        nearByStated.Print(output);
        Speed(stations, output);
    }

    private static void Speed(MeasuredStation[] stations, TextWriter output)
    {
        var random = new Random(Seed);
        DailySeries[] holed = [.. stations.Select(station => KnockedOut.Of(station.Series, SiteClimatology.LongestHoleDays, station.Series.FirstDay, random).Holed)];
        FillingNeighbour[] all = [.. stations.Select(station => new FillingNeighbour(station.Name, station.Series))];
        var builder = new DailySeriesBuilder();
        DailySeries one = stations[0].Series;
        for (int i = 0; i < 150 * 365; i++)
        {
            builder.Put(new DateOnly(1874, 1, 1).AddDays(i), WeatherVariable.MinimumAirC, one.MinimumAirC[i % one.Count]);
            builder.Put(new DateOnly(1874, 1, 1).AddDays(i), WeatherVariable.MaximumAirC, one.MaximumAirC[i % one.Count]);
        }

        DailySeries centuryAndAHalf = KnockedOut.Of(builder.Build()!, SiteClimatology.LongestHoleDays, new DateOnly(1874, 1, 1), random).Holed;
        output.WriteLine("\nSpeed, one core, warm");
        output.WriteLine(FormattableString.Invariant($"{holed.Length} stations of {one.Count} days, alone: {Milliseconds(holed, []):0} ms; each with {all.Length} neighbours: {Milliseconds(holed, all):0} ms; one of 150 years alone: {Milliseconds([centuryAndAHalf], []):0.0} ms"));
    }

    private static double Milliseconds(DailySeries[] holed, FillingNeighbour[] neighbours)
    {
        long start = Stopwatch.GetTimestamp();
        foreach (DailySeries series in holed) FillingLadder.FillingsOf(series, neighbours, []);
        return Stopwatch.GetElapsedTime(start).TotalMilliseconds;
    }

    private static void AddOwn(FillingErrors errors, KnockedOut holed)
    {
        foreach ((FilledValue filling, int place, double difference) in Compared(holed, []))
        {
            bool isLine = filling.Rung == FillingRung.BetweenNeighbours;
            errors.Add(isLine ? $"{filling.Rung}, hole of {holed.HoleDays} days, all" : $"{filling.Rung}, {place:00} days since, all", difference, filling.ErrorC);
            errors.Add(isLine ? $"{filling.Rung}, hole of {holed.HoleDays} days, {filling.Variable}" : $"{filling.Rung}, {place:00} days since, {filling.Variable}", difference, filling.ErrorC);
        }
    }

    private static IEnumerable<(FilledValue Filling, int Place, double DifferenceC)> Compared(KnockedOut holed, IReadOnlyList<FillingNeighbour> neighbours)
    {
        // Holes that were there before have no measurement to compare with: their difference is NaN.
        HashSet<int> made = [.. holed.Starts.SelectMany(start => Enumerable.Range(start, holed.HoleDays))];
        foreach (FilledValue filling in FillingLadder.FillingsOf(holed.Holed, neighbours, []))
        {
            int index = holed.Measured.IndexOf(filling.Day);
            if (!made.Contains(index)) continue;
            int place = index - holed.Starts.Last(start => start <= index) + 1;
            yield return (filling, place, filling.ValueC - holed.Measured.Column(filling.Variable)[index]);
        }
    }

    /// <summary>The e-folding time of departures that fits best, over 1 to 10 days from the reading.</summary>
    private static void Fading(MeasuredStation[] stations, TextWriter output)
    {
        List<(int Days, double Then, double Now)> pairs = [];
        foreach (MeasuredStation station in stations)
        {
            foreach (WeatherVariable variable in (ReadOnlySpan<WeatherVariable>)[WeatherVariable.MinimumAirC, WeatherVariable.MaximumAirC])
            {
                double[] readings = station.Series.Column(variable).ToArray();
                var usual = new SiteClimatology(station.Series.FirstDay, readings);
                for (int i = station.Series.IndexOf(LongFrom); i < readings.Length; i++)
                {
                    double now = readings[i] - usual.UsualC(i);
                    for (int days = 1; days <= SiteClimatology.LongestHoleDays; days++)
                    {
                        double then = readings[i - days] - usual.UsualC(i, days);
                        if (double.IsFinite(now) && double.IsFinite(then)) pairs.Add((days, then, now));
                    }
                }
            }
        }

        output.WriteLine("\ne-folding days; RMSE °C over 1 to 10 days");
        for (int tenths = 10; tenths <= 40; tenths += 2)
        {
            double fading = tenths / 10.0;
            double squares = pairs.Sum(pair => Math.Pow(pair.Now - pair.Then * Math.Exp(-pair.Days / fading), 2));
            output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{fading:0.0}; {Math.Sqrt(squares / pairs.Count):0.0000}"));
        }

        output.WriteLine("days; share of the departure that is left (regression)");
        foreach (var byDays in pairs.GroupBy(pair => pair.Days))
        {
            output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{byDays.Key}; {byDays.Sum(pair => pair.Then * pair.Now) / byDays.Sum(pair => pair.Then * pair.Then):0.000}"));
        }
    }

    private static Dictionary<string, (double Latitude, double Longitude)> Places(string folder)
    {
        Dictionary<string, (double, double)> places = [];
        DataLines.EachRow(Path.Combine(folder, "stations.csv"), cell => places.Add(
            cell("station"), (double.Parse(cell("latitude"), CultureInfo.InvariantCulture), double.Parse(cell("longitude"), CultureInfo.InvariantCulture))));
        return places;
    }

    private static double DistanceKm((double Latitude, double Longitude) one, (double Latitude, double Longitude) other)
    {
        double north = double.DegreesToRadians(other.Latitude - one.Latitude), east = double.DegreesToRadians(other.Longitude - one.Longitude);
        double half = Math.Pow(Math.Sin(north / 2), 2)
            + Math.Cos(double.DegreesToRadians(one.Latitude)) * Math.Cos(double.DegreesToRadians(other.Latitude)) * Math.Pow(Math.Sin(east / 2), 2);
        return 2 * EarthRadiusKm * Math.Asin(Math.Sqrt(half));
    }
}
