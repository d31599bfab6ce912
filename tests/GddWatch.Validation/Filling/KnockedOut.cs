using GddWatch.Agronomy.Weather;

namespace GddWatch.Validation.Filling;

/// <summary>A measured series in which holes of one length were made, far enough apart that none sees another.</summary>
internal sealed record KnockedOut(DailySeries Measured, DailySeries Holed, IReadOnlyList<int> Starts, int HoleDays)
{
    private const int ApartDays = 60;

    /// <summary>Makes holes of both temperatures from a day on, about one every 60 days, where the 10 days before, the hole and the day after are known.</summary>
    public static KnockedOut Of(DailySeries measured, int holeDays, DateOnly from, Random random)
    {
        double[] minimumC = measured.MinimumAirC.ToArray(), maximumC = measured.MaximumAirC.ToArray();
        List<int> starts = [];
        for (int block = Math.Max(10, measured.IndexOf(from)); block + ApartDays < measured.Count; block += ApartDays)
        {
            int start = block + random.Next(ApartDays - 20 - holeDays);
            if (!IsKnown(measured, start - 10, holeDays + 11)) continue;
            starts.Add(start);
            minimumC.AsSpan(start, holeDays).Fill(double.NaN);
            maximumC.AsSpan(start, holeDays).Fill(double.NaN);
        }

        DailySeries holed = measured.WithAirTemperature(minimumC, maximumC, measured.MinimumMarks.ToArray(), measured.MaximumMarks.ToArray());
        return new KnockedOut(measured, holed, starts, holeDays);
    }

    private static bool IsKnown(DailySeries series, int from, int days)
    {
        for (int i = from; i < from + days; i++)
        {
            if (series.QualityAt(i) is null) return false;
        }

        return true;
    }
}
