using System.Globalization;
using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Soil;
using GddWatch.Agronomy.Turf;
using GddWatch.Agronomy.Weather;
using GddWatch.Agronomy.Weather.Checks;
using GddWatch.Agronomy.Weather.Filling;
using GddWatch.Agronomy.Windows;

namespace GddWatch.Commands;

/// <summary>The columns of the derived daily table, in the order of the contract. What is missing is an empty cell.</summary>
internal sealed class DailyTable(SiteMetrics metrics, Depth depth, IReadOnlyList<HeatColumn> treatmentHeat, IReadOnlyList<HeatColumn> askedHeat)
{
    private static readonly string[] FixedColumns =
    [
        "date", "t_min_c", "t_max_c", "quality", "soil_temperature_c", "soil_temperature_sd_c", "growth_potential_cool", "growth_potential_warm",
        "reference_et_mm", "root_zone_depletion_mm",
    ];

    /// <summary>Between the heat sums of the treatments and those asked for: what was read and is doubted, and by what a hole was filled, give or take one standard deviation.</summary>
    private static readonly string[] RemarkColumns = ["doubted", "filled_by"];

    private readonly ILookup<DateOnly, Doubt> doubts = metrics.Weather.Doubts.ToLookup(doubt => doubt.Day);

    private readonly ILookup<DateOnly, FilledValue> fillings = metrics.Weather.Fillings.ToLookup(filling => filling.Day);

    private readonly SoilTemperatureColumns soil = metrics.Soil(depth);

    /// <summary>Where both grow, the roots of the one that uses more water.</summary>
    private readonly TurfType turf = metrics.Site.Turf.Contains(TurfType.CoolSeason) ? TurfType.CoolSeason : TurfType.WarmSeason;

    public IReadOnlyList<string> Header { get; } = [.. FixedColumns, .. treatmentHeat.Select(column => column.Name), .. RemarkColumns, .. askedHeat.Select(column => column.Name)];

    public IReadOnlyList<string?> Row(int index)
    {
        double minimum = metrics.Series.MinimumAirC[index];
        double maximum = metrics.Series.MaximumAirC[index];
        double mean = (minimum + maximum) / 2;
        return
        [
            metrics.Series.DayAt(index).ToString("yyyy-MM-dd", CultureInfo.InvariantCulture),
            Number(minimum, 2),
            Number(maximum, 2),
            metrics.Series.QualityAt(index) is { } mark ? MarkWord(mark) : null,
            Number(soil.MeanC[index], 4),
            Number(soil.DeviationC[index], 4),
            Number(GrowthPotential.Of(TurfType.CoolSeason, mean), 4),
            Number(GrowthPotential.Of(TurfType.WarmSeason, mean), 4),
            Number(metrics.ReferenceEvapotranspirationMm[index], 4),
            Number(metrics.RootZoneDepletionMm(turf)[index], 4),
            .. treatmentHeat.Select(column => HeatAt(column, index)),
            Text(doubts[metrics.Series.DayAt(index)].Select(doubt => $"{Name(doubt.Variable)} {Number(doubt.Value, 2)}: {doubt.Why}")),
            Text(fillings[metrics.Series.DayAt(index)].Select(filling => $"{Name(filling.Variable)}: {FillingRungs.Words(filling.Rung)}, ±{Number(filling.ErrorC, 1)} °C")),
            .. askedHeat.Select(column => HeatAt(column, index)),
        ];
    }

    /// <summary>A row as a JSON object. A sum that was asked for and is there already stands once: an object has each name once.</summary>
    public IReadOnlyDictionary<string, object?> JsonRow(int index)
    {
        var row = new Dictionary<string, object?>(StringComparer.Ordinal);
        foreach ((string column, string? cell) in Header.Zip(Row(index))) row[column] = JsonValue(column, cell);
        return row;
    }

    /// <summary>A cell as JSON: numbers as numbers, dates and marks as text, what is missing as null.</summary>
    private static object? JsonValue(string column, string? cell)
    {
        if (cell is null) return null;
        return column is "date" or "quality" or "doubted" or "filled_by" ? cell : double.Parse(cell, CultureInfo.InvariantCulture);
    }

    private string? HeatAt(HeatColumn column, int index) => Number(metrics.HeatSumColumn(column.Definition)[index], 4);

    private static string Name(WeatherVariable variable) => variable == WeatherVariable.MinimumAirC ? "t_min_c" : "t_max_c";

    private static string? Text(IEnumerable<string> parts) => string.Join("; ", parts) is { Length: > 0 } text ? text : null;

    private static string? Number(double value, int decimals) =>
        double.IsNaN(value) ? null : Math.Round(value, decimals).ToString($"F{decimals}", CultureInfo.InvariantCulture);

    /// <summary>The word for a mark.</summary>
    public static string MarkWord(Mark mark) => mark switch
    {
        Mark.Measured => "measured",
        Mark.Corrected => "corrected",
        Mark.Filled => "filled",
        Mark.Forecast => "forecast",
        _ => "suspect",
    };
}
