using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Windows;

namespace GddWatch.Validation.Windows;

/// <summary>Both soils around the openings of a season that came out differently.</summary>
internal static class SoilCurves
{
    private const int DaysBefore = 15;
    private const int DaysAfter = 7;
    private const int EveryDays = 3;
    private static readonly Depth AtFive = Depth.FromCentimetres(5);

    public static void Header(TextWriter output) => output.Write("station,treatment,season,day,estimated_5cm_c,measured_5cm_c,estimated_5_day_mean_c,measured_5_day_mean_c,opens\n");

    /// <summary>Each day from 15 days before the earlier opening to a week after the later one.</summary>
    public static void Write(TextWriter output, OpeningPair pair)
    {
        (DateOnly first, DateOnly last) = Span(pair);
        for (DateOnly day = first.AddDays(-DaysBefore); day <= last.AddDays(DaysAfter); day = day.AddDays(1))
        {
            string opens = (day == pair.Estimated.FirstOpening!.Day, day == pair.Measured.FirstOpening!.Day) switch { (true, true) => "both", (true, _) => "estimated", (_, true) => "measured", _ => "" };
            output.Write(FormattableString.Invariant(
                $"{pair.Station.Name},{pair.Estimated.Treatment.Id},{pair.Estimated.Season.Year},{day:yyyy-MM-dd},{Cell(pair.Station.Estimated, 1, day)},{Cell(pair.Station.Measured, 1, day)},{Cell(pair.Station.Estimated, 5, day)},{Cell(pair.Station.Measured, 5, day)},{opens}\n"));
        }
    }

    /// <summary>The season with every third day around either opening, a line each.</summary>
    public static string InWords(OpeningPair pair)
    {
        (DateOnly first, DateOnly last) = Span(pair);
        string head = FormattableString.Invariant(
            $"    {pair.Station.Name} {pair.Estimated.Season.Year}: by estimate {pair.Estimated.FirstOpening!.Day:d MMM}, by measurement {pair.Measured.FirstOpening!.Day:d MMM}, {pair.Apart} days apart");
        return last.DayNumber - first.DayNumber <= DaysBefore
            ? $"{head}\n{Line(pair, first.AddDays(-6), last.AddDays(3))}"
            : $"{head}\n{Line(pair, first.AddDays(-6), first.AddDays(6))}\n{Line(pair, last.AddDays(-6), last.AddDays(3))}";
    }

    private static string Line(OpeningPair pair, DateOnly from, DateOnly until)
    {
        List<string> days = [];
        for (DateOnly day = from; day <= until; day = day.AddDays(EveryDays))
        {
            days.Add(FormattableString.Invariant($"{day:d MMM} {Fahrenheit(pair.Station.Estimated, day):0}/{Fahrenheit(pair.Station.Measured, day):0}"));
        }

        return $"      {string.Join("  ", days)}";
    }

    private static (DateOnly First, DateOnly Last) Span(OpeningPair pair)
    {
        DateOnly estimated = pair.Estimated.FirstOpening!.Day;
        DateOnly measured = pair.Measured.FirstOpening!.Day;
        return estimated < measured ? (estimated, measured) : (measured, estimated);
    }

    private static double Fahrenheit(SiteMetrics metrics, DateOnly day) => metrics.SoilMeanAt(AtFive, 5, day) * 9 / 5 + 32;

    private static string Cell(SiteMetrics metrics, int days, DateOnly day)
    {
        double mean = metrics.SoilMeanAt(AtFive, days, day);
        return double.IsNaN(mean) ? "" : FormattableString.Invariant($"{mean:0.00}");
    }
}
