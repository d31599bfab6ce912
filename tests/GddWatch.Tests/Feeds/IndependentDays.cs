using System.Globalization;
using System.Text.RegularExpressions;
using GddWatch.Agronomy.Weather;
using GddWatch.Feeds;
using GddWatch.Feeds.Faults;
using Xunit;

namespace GddWatch.Tests.Feeds;

/// <summary>What files say when they are read in a few lines without the product, and how the product's reading is held against it.</summary>
internal sealed partial class IndependentDays
{
    private readonly Dictionary<DateOnly, double[]> days = [];

    /// <summary>How many values and lines cannot be weather, so that a reader must leave them out and say so.</summary>
    public int LeftOut { get; set; }

    /// <summary>How many values were found to be good.</summary>
    public int Count => days.Values.Sum(values => values.Count(value => !double.IsNaN(value)));

    /// <summary>Whether the day is there already.</summary>
    public bool Has(DateOnly day) => days.ContainsKey(day);

    /// <summary>
    /// Puts a line's values. A line whose minimum is above its maximum counts as left out, and so does a value outside what is possible: rain, wind and radiation below
    /// nothing, humidity above 100 %, air above 57.7 °C (the highest that GHCN-Daily's quality control lets pass, MEMORY).
    /// </summary>
    public void Put(DateOnly day, IEnumerable<(WeatherVariable Variable, double Value)> values)
    {
        double[] row = [.. Enumerable.Repeat(double.NaN, Enum.GetValues<WeatherVariable>().Length)];
        foreach ((WeatherVariable variable, double value) in values)
        {
            bool isPossible = variable switch
            {
                WeatherVariable.PrecipitationMm or WeatherVariable.WindMPerS or WeatherVariable.SolarRadiationMJ or WeatherVariable.SnowDepthMm => !(value < 0),
                WeatherVariable.RelativeHumidityPercent => !(value is < 0 or > 100),
                WeatherVariable.MinimumAirC or WeatherVariable.MaximumAirC or WeatherVariable.MeanAirC => !(value is < -89.4 or > 57.7),
                _ => !(Math.Abs(value) > 60),
            };
            if (isPossible) row[(int)variable] = value;
            else LeftOut++;
        }

        if (row[(int)WeatherVariable.MinimumAirC] > row[(int)WeatherVariable.MaximumAirC]) LeftOut++;
        else days.Add(day, row);
    }

    /// <summary>Asserts that a reading has every value and no other, and that it tells as many faults as there is to leave out.</summary>
    public void AssertSameAs(FeedReading reading)
    {
        DailySeries series = reading.Series!;
        int known = 0;
        foreach (WeatherVariable variable in Enum.GetValues<WeatherVariable>())
        {
            foreach (double value in series.Column(variable)) known += double.IsNaN(value) ? 0 : 1;
        }

        foreach ((DateOnly day, double[] values) in days)
        {
            int place = series.IndexOf(day);
            for (int i = 0; i < values.Length; i++)
            {
                ReadOnlySpan<double> column = series.Column((WeatherVariable)i);
                double read = column.IsEmpty ? double.NaN : column[place];
                if (!read.Equals(values[i])) Assert.Fail($"{(WeatherVariable)i} of {day:yyyy-MM-dd} is {values[i]} in the file and {read} in the series.");
            }
        }

        Assert.Equal(Count, known);
        Assert.Equal(LeftOut, CountOfLeftOut(reading.Faults));
    }

    /// <summary>A number as it is written, by way of decimal arithmetic; NaN where it is one of the codes.</summary>
    public static double Number(string text, params ReadOnlySpan<string> missing)
    {
        string trimmed = text.Trim();
        return missing.Contains(trimmed) ? double.NaN : (double)decimal.Parse(trimmed, CultureInfo.InvariantCulture);
    }

    // Beyond twenty of a kind a file's faults are counted, not listed.
    private static int CountOfLeftOut(IEnumerable<Fault> faults) => faults
        .Where(fault => fault.Severity == FaultSeverity.LeftOut)
        .Sum(fault => More().Match(fault.Problem) is { Success: true } more ? int.Parse(more.Groups["count"].Value, CultureInfo.InvariantCulture) : 1);

    [GeneratedRegex(@"^(?<count>\d+) more of this kind", RegexOptions.None, matchTimeoutMilliseconds: 1000)]
    private static partial Regex More();
}
