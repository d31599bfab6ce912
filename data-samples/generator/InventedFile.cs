using System.Globalization;
using System.Text;

namespace GddWatch.InventedWeather;

/// <summary>A climate's days as the text of a CSV file that says, first of all, that it is invented.</summary>
public static class InventedFile
{
    public static string NameOf(InventedClimate climate) => $"{climate.Id}.csv";

    /// <summary>The whole file: lines end in LF, numbers have a decimal point, whatever the machine's settings.</summary>
    public static string Compose(InventedClimate climate, DateOnly first, DateOnly last, ulong seed)
    {
        StringBuilder text = new();
        text.Append($"# INVENTED weather: nobody measured this. Site {climate.Id} of Alder Reach, a region that does not exist.\n");
        text.Append(
            CultureInfo.InvariantCulture,
            $"# Generator: data-samples/generator, seed {seed}, site number {climate.Number}. See data-samples/README.md.\n");
        text.Append("date,tmin_c,tmax_c,rain_mm\n");
        foreach (InventedDay day in WeatherInventor.Invent(climate, first, last, seed))
        {
            text.Append(
                CultureInfo.InvariantCulture,
                $"{day.Date:yyyy-MM-dd},{day.MinimumC:0.0},{day.MaximumC:0.0},{day.RainMm:0.0}\n");
        }

        return text.ToString();
    }
}
