using GddWatch.Agronomy.Treatments;

namespace GddWatch.Agronomy.Chances;

/// <summary>Chances in plain words.</summary>
public static class ChancesWords
{
    private const double Certain = 0.995;

    /// <summary>The range, fitting behind "likely": "between Monday 6 and Thursday 16 April"; "from Monday 6 April on, or not at all this season (chance 30 %)".</summary>
    public static string Range(WindowChances chances)
    {
        ArgumentNullException.ThrowIfNull(chances);
        DateOnly first = chances.Earliest;
        if (chances.Latest is not { } last) return $"from {Wording.DayInYear(first)} on, or not at all this season (chance {Percent(chances.NotAtAll)})";
        if (first == last) return $"on {Wording.DayInYear(first)}";
        string from = first.Month == last.Month && first.Year == last.Year ? $"{first:dddd d}" : Wording.DayInYear(first);
        return $"between {from} and {Wording.DayInYear(last)}";
    }

    /// <summary>What is likely, within a sentence: "likely to open between Monday 6 and Thursday 16 April".</summary>
    public static string Likely(WindowChances chances)
    {
        ArgumentNullException.ThrowIfNull(chances);
        string what = chances.OfClosing ? "close" : "open";
        if (chances.NotAtAll >= Certain) return chances.OfClosing ? "not likely to close before its season ends" : "not likely to open any more this season";
        return $"likely to {what} {Range(chances)}";
    }

    /// <summary>A whole sentence with what stands behind it.</summary>
    public static string Sentence(WindowChances chances)
    {
        ArgumentNullException.ThrowIfNull(chances);
        string even = chances.Median is { } median && chances.Latest != chances.Earliest ? $", an even chance by {Wording.DayInYear(median)}" : "";
        return $"{Wording.Capital(Likely(chances))}{even}.";
    }

    /// <summary>What it rests on: "by 3 days of forecast and 14 earlier years here".</summary>
    public static string Basis(WindowChances chances)
    {
        ArgumentNullException.ThrowIfNull(chances);
        string years = $"{chances.Years} earlier years here";
        return chances.ForecastDays > 0 ? $"{Wording.Days(chances.ForecastDays)} of forecast and {years}" : $"{years}, no forecast";
    }

    /// <summary>A chance as people say it: whole percents, never a round 0 or 100 where it is not certain.</summary>
    public static string Percent(double chance)
    {
        double percents = Math.Round(chance * 100);
        if (percents >= 100 && chance < 1 - 1e-9) return "over 99 %";
        if (percents <= 0 && chance > 1e-9) return "under 1 %";
        return $"{percents:0} %";
    }
}
