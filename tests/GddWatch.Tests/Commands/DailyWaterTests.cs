using Xunit;

namespace GddWatch.Tests.Commands;

/// <summary>The two columns of the daily table about water.</summary>
public sealed class DailyWaterTests
{
    private const string Csv = "date,tmin,tmax,rain\n2025-07-01,16,29,90\n2025-07-02,15,30,0\n2025-07-03,18,33,0\n";

    // Reckoned outside the product from FAO-56 equations 21 to 25 and 52 (MEMORY; CALC): Hargreaves at 41.6° north on days 182 to 184. 90 mm of rain refill 300 mm of roots in loam, which hold 51 mm,
    // whatever was missing before; then cool-season turf takes 0.95 of it a day.
    [Fact]
    public async Task Evapotranspiration_comes_from_the_temperatures_and_the_depletion_from_it_once_rain_has_soaked_the_soil()
    {
        using Workshop workshop = OnLoam();
        string[][] rows = await RowsAsync(workshop);
        Assert.Equal(["5.6831", "6.0984", "6.5451"], rows.Select(row => row[8]));
        Assert.Equal(["0.0000", "5.7935", "12.0113"], rows.Select(row => row[9]));
    }

    [Fact]
    public async Task Without_the_soils_texture_the_depletion_is_an_empty_cell_and_the_evapotranspiration_is_there()
    {
        using Workshop workshop = Workshop.WithOneLawn(Csv);
        string[][] rows = await RowsAsync(workshop);
        Assert.All(rows, row => Assert.NotEmpty(row[8]));
        Assert.All(rows, row => Assert.Empty(row[9]));
    }

    [Fact]
    public async Task Before_rain_has_soaked_the_soil_the_depletion_is_an_empty_cell()
    {
        using Workshop workshop = OnLoam();
        workshop.WriteWeather(Csv.Replace(",90\n", ",10\n", StringComparison.Ordinal));
        Assert.All(await RowsAsync(workshop), row => Assert.Empty(row[9]));
    }

    private static Workshop OnLoam()
    {
        Workshop workshop = Workshop.WithOneLawn(Csv);
        string region = Path.Combine(workshop.Config, "region.yaml");
        File.WriteAllText(region, File.ReadAllText(region).Replace("    history: [grubs]", "    soil: loam\n    history: [grubs]", StringComparison.Ordinal));
        return workshop;
    }

    private static async Task<string[][]> RowsAsync(Workshop workshop)
    {
        Ran ran = await workshop.RunAsync("daily", "lawn", "--format", "csv", "--from", "2025-07-01", "--until", "2025-07-03");
        Assert.Equal(0, ran.Code);
        return [.. ran.Output.Split('\n', StringSplitOptions.RemoveEmptyEntries).Skip(1).Select(line => line.Split(','))];
    }
}
