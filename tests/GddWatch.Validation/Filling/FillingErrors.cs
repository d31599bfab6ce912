using System.Globalization;

namespace GddWatch.Validation.Filling;

/// <summary>Differences of filled from measured temperatures, filled − measured, gathered under a name.</summary>
internal sealed class FillingErrors
{
    private readonly SortedDictionary<string, Sums> byName = new(StringComparer.Ordinal);

    public void Add(string name, double differenceC, double statedErrorC)
    {
        Sums sums = byName.GetValueOrDefault(name);
        byName[name] = new Sums(sums.Count + 1, sums.Differences + differenceC, sums.Squares + differenceC * differenceC, sums.Stated + statedErrorC * statedErrorC);
    }

    public void Print(TextWriter output)
    {
        output.WriteLine("case; values; RMSE °C; bias °C; stated error °C");
        foreach ((string name, Sums sums) in byName)
        {
            output.WriteLine(string.Create(
                CultureInfo.InvariantCulture,
                $"{name}; {sums.Count}; {Math.Sqrt(sums.Squares / sums.Count):0.00}; {sums.Differences / sums.Count:0.00}; {Math.Sqrt(sums.Stated / sums.Count):0.00}"));
        }
    }

    private readonly record struct Sums(long Count, double Differences, double Squares, double Stated);
}
