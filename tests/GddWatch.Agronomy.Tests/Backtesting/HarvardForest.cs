using System.Globalization;

namespace GddWatch.Agronomy.Tests.Backtesting;

/// <summary>
/// Harvard Forest, Massachusetts: daily weather of the Fisher station (data set HF001) and bud break by species (HF003), as raw columns (Harvard Forest Data Archive). Skips the test where they
/// are not there.
/// </summary>
internal static class HarvardForest
{
    public static readonly DateOnly First = new(2001, 2, 11);

    /// <summary>Day, minimum, maximum and soil at 10 cm [°C] of each row, NaN where missing.</summary>
    public static IReadOnlyList<(DateOnly Day, double MinimumC, double MaximumC, double SoilC)> Days()
    {
        string[] lines = File.ReadAllLines(SharedFiles.Find("weather/harvard-forest/hf001-06-daily-m.csv"));
        string[] header = lines[0].Split(',');
        int minimum = Array.IndexOf(header, "airtmin"), maximum = Array.IndexOf(header, "airtmax"), soil = Array.IndexOf(header, "s10t");
        return [.. lines.Skip(1).Select(line => line.Split(',')).Select(cells => (DateOnly.Parse(cells[0], CultureInfo.InvariantCulture), Number(cells[minimum]), Number(cells[maximum]), Number(cells[soil])))];
    }

    /// <summary>Day of the year of bud break by species and year. The file ends its lines with a carriage return alone.</summary>
    public static IReadOnlyList<(int Year, string Species, int DayOfYear)> BudBreak() =>
    [
        .. File.ReadAllText(SharedFiles.Find("weather/harvard-forest/hf003-06-mean-spp.csv")).Split('\r', '\n').Skip(1)
            .Select(line => line.Split(','))
            .Where(cells => cells.Length > 2 && cells[2] != "NA")
            .Select(cells => (int.Parse(cells[0], CultureInfo.InvariantCulture), cells[1], int.Parse(cells[2], CultureInfo.InvariantCulture))),
    ];

    private static double Number(string cell) => cell == "NA" ? double.NaN : double.Parse(cell, CultureInfo.InvariantCulture);
}
