using System.Globalization;
using GddWatch.Agronomy.Treatments;
using GddWatch.Agronomy.Windows;
using GddWatch.Configuration;
using GddWatch.Validation.Weather;
using GddWatch.Validation.Windows;

namespace GddWatch.Validation;

/// <summary>Judges the treatments of a configuration over all stations and seasons: how far estimated and measured soil lie apart, and how often windows open again.</summary>
internal static class WindowReportCommand
{
    private const int WorstShown = 12;

    public static void Run(string configuration, string weather, TextWriter output, int threads)
    {
        ConfigurationReading reading = ConfigurationReader.Read(configuration);
        if (reading.Configuration is not { } read) throw new InvalidDataException(string.Join('\n', reading.Faults));
        IReadOnlyList<MeasuredStation> stations = UscrnStations.Read(Path.Combine(weather, "uscrn-daily"));
        JudgedStation[] judged = [.. stations.AsParallel().AsOrdered().WithDegreeOfParallelism(threads).Select(station => JudgedStation.Of(station, read.Treatments))];
        output.WriteLine("Days between openings judged from estimated and from measured soil; pairs where both opened for certain and the measurement has no hole before.");
        output.WriteLine("treatment, group, pairs, mean, median, pairs with holes too, mean, median, within 3, within 7, opened by estimate, opened by measurement, median opening, seasons, reopenings");
        foreach (Treatment treatment in read.Treatments)
        {
            JudgedStation[] humid = [.. judged.Where(each => each.Station.IsHumid)];
            Row(output, treatment, "humid", humid);
            // Two halves, so that a rule can be chosen on one and looked at on the other.
            Row(output, treatment, "humid, every second from the first", [.. humid.Where((_, index) => index % 2 == 0)]);
            Row(output, treatment, "humid, every second from the second", [.. humid.Where((_, index) => index % 2 == 1)]);
            Row(output, treatment, "dry", [.. judged.Where(each => !each.Station.IsHumid)]);
        }

        foreach (Treatment treatment in read.Treatments) Worst(output, treatment, [.. judged.Where(each => each.Station.IsHumid)]);
    }

    private static void Row(TextWriter output, Treatment treatment, string group, IReadOnlyList<JudgedStation> stations)
    {
        int[] differences = [.. stations.SelectMany(each => each.Pairs(treatment.Id)).Select(Difference).Order()];
        int[] all = [.. stations.SelectMany(each => each.Pairs(treatment.Id, withHoles: true)).Select(Difference).Order()];
        Window[] windows = [.. stations.SelectMany(each => each.Estimated).Where(window => window.Treatment.Id == treatment.Id)];
        int[] openings = [.. windows.Where(window => window.FirstOpening is not null).Select(window => window.FirstOpening!.Day.DayNumber - window.Season.Span.First.DayNumber).Order()];
        string median = openings.Length == 0 ? "never" : windows[0].Season.Span.First.AddDays(openings[openings.Length / 2]).ToString("d MMM", CultureInfo.InvariantCulture);
        int measured = stations.SelectMany(each => each.Measured).Count(window => window.Treatment.Id == treatment.Id && window.FirstOpening is not null);
        output.WriteLine(string.Create(
            CultureInfo.InvariantCulture,
            $"{treatment.Id}, {group}, {differences.Length}, {Mean(differences)}, {Median(differences)}, {all.Length}, {Mean(all)}, {Median(all)}, {Within(differences, 3):0.00}, {Within(differences, 7):0.00}, {openings.Length}, {measured}, {median}, {windows.Length}, {windows.Sum(window => window.Reopenings)}"));
    }

    private static string Mean(int[] days) => days.Length == 0 ? "-" : days.Average().ToString("0.00", CultureInfo.InvariantCulture);

    private static string Median(int[] sortedDays) => sortedDays.Length == 0 ? "-" : sortedDays[sortedDays.Length / 2].ToString(CultureInfo.InvariantCulture);

    private static double Within(int[] differences, int days) => differences.Length == 0 ? double.NaN : differences.Count(each => each <= days) / (double)differences.Length;

    private static void Worst(TextWriter output, Treatment treatment, IReadOnlyList<JudgedStation> stations)
    {
        var worst = stations.SelectMany(each => each.Pairs(treatment.Id).Select(pair => (each.Station.Name, pair))).Where(each => Difference(each.pair) > 0)
            .OrderByDescending(each => Difference(each.pair)).Take(WorstShown).ToList();
        if (worst.Count > 0) output.WriteLine($"\nThe worst of {treatment.Id}: station, season, by estimate, by measurement");
        foreach ((string name, (Window estimated, Window measured)) in worst)
        {
            output.WriteLine($"  {name}, {estimated.Season.Year}, {estimated.FirstOpening!.Day:yyyy-MM-dd}, {measured.FirstOpening!.Day:yyyy-MM-dd}");
        }
    }

    private static int Difference((Window Estimated, Window Measured) pair) => Math.Abs(pair.Estimated.FirstOpening!.Day.DayNumber - pair.Measured.FirstOpening!.Day.DayNumber);
}
