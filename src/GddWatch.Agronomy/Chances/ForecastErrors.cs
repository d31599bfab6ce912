using GddWatch.Agronomy.Weather;
using GddWatch.Agronomy.Weather.Filling;

namespace GddWatch.Agronomy.Chances;

/// <summary>How far a forecast is off, by how many days ahead it looks.</summary>
/// <param name="AirC">Standard deviation of the mean air temperature by days ahead, from 0 [°C].</param>
/// <param name="SoilC">The same for a forecast of the soil temperature itself [°C].</param>
/// <param name="LearnedFrom">From how many days of kept forecasts the air's was learned; 0 where it is the stated one.</param>
public sealed record ForecastErrors(IReadOnlyList<double> AirC, IReadOnlyList<double> SoilC, int LearnedFrom)
{
    /// <summary>So many days of kept forecasts are needed for each number of days ahead before they are believed [days]; DESIGN.</summary>
    public const int PairsNeeded = 30;

    /// <summary>How far ahead a forecast is used [days].</summary>
    public const int LongestLeadDays = ForecastAsIssued.LongestLeadDays;

    /// <summary>The stated correlation of the errors of two days that follow each other, at most; DESIGN.</summary>
    private const double StatedLink = 0.8;

    /// <summary>A link that was learned is believed up to this.</summary>
    private const double LargestLink = 0.95;

    /// <summary>What a forecast of the soil is off grows as 0.35 °C times the root of the days ahead; DESIGN: soil forecasts are kept by no feed yet.</summary>
    private const double SoilGrowthC = 0.35;

    /// <summary>How closely the errors of the air of two days that follow each other go together at most, as a correlation.</summary>
    public double AirLink { get; init; } = StatedLink;

    /// <summary>The same for a forecast of the soil itself.</summary>
    public double SoilLink { get; init; } = StatedLink;

    /// <summary>
    /// The stated errors, used until enough forecasts were kept: those of <see cref="ForecastAsIssued"/> (MEMORY) for the air, and 0.35 °C times the root of the days ahead for the soil (DESIGN).
    /// </summary>
    public static ForecastErrors Stated { get; } = new(
        [.. Enumerable.Range(0, LongestLeadDays + 1).Select(ForecastAsIssued.ErrorC)],
        [.. Enumerable.Range(0, LongestLeadDays + 1).Select(lead => SoilGrowthC * Math.Sqrt(lead))],
        0);

    /// <summary>
    /// Learns the errors of the mean air temperature from the forecasts that were kept: the root of the mean square of forecast less reading, by days ahead; never smaller for more days ahead. The stated error
    /// stands for every number of days ahead that has fewer than 30 pairs. Where there are 30 pairs of following days of one forecast, their correlation is learned too.
    /// <para>Missing input: days without a reading, or without a forecast for them, are no pair.</para>
    /// </summary>
    /// <param name="kept">The forecasts, as issued.</param>
    /// <param name="known">The days known by now; filled ones are no readings.</param>
    public static ForecastErrors Learn(IReadOnlyList<Forecast> kept, DailySeries known)
    {
        ArgumentNullException.ThrowIfNull(kept);
        ArgumentNullException.ThrowIfNull(known);
        var squares = new double[LongestLeadDays + 1];
        var counts = new int[LongestLeadDays + 1];
        double products = 0, before = 0, after = 0;
        int linked = 0;
        foreach (Forecast forecast in kept)
        {
            double last = double.NaN;
            for (int i = 0; i < forecast.Days.Count; i++)
            {
                DateOnly day = forecast.Days.DayAt(i);
                int lead = day.DayNumber - forecast.IssuedOn.DayNumber;
                double previous = last;
                last = double.NaN;
                if ((uint)lead > LongestLeadDays || !known.Holds(day)) continue;
                int place = known.IndexOf(day);
                if (known.QualityAt(place) is not { } mark || !mark.IsReading()) continue;
                double error = (forecast.Days.MinimumAirC[i] + forecast.Days.MaximumAirC[i] - known.MinimumAirC[place] - known.MaximumAirC[place]) / 2;
                if (double.IsNaN(error)) continue;
                squares[lead] += error * error;
                counts[lead]++;
                last = error;
                if (double.IsNaN(previous)) continue;
                products += error * previous;
                before += previous * previous;
                after += error * error;
                linked++;
            }
        }

        double[] air = [.. Stated.AirC];
        int learned = 0;
        for (int lead = 0; lead < air.Length; lead++)
        {
            if (counts[lead] >= PairsNeeded)
            {
                air[lead] = Math.Sqrt(squares[lead] / counts[lead]);
                learned += counts[lead];
            }

            if (lead > 0) air[lead] = Math.Max(air[lead], air[lead - 1]);
        }

        bool isLinkKnown = linked >= PairsNeeded && before > 0 && after > 0;
        double link = isLinkKnown ? Math.Clamp(products / Math.Sqrt(before * after), 0, LargestLink) : StatedLink;
        return Stated with { AirC = air, AirLink = link, LearnedFrom = learned };
    }

    /// <summary>
    /// Errors for some futures: e(h) = l·(σ(h)/σ(h−1))·e(h−1) + σ(h)·√(1 − l²)·z with l as <see cref="Link"/>, so that errors that grow as the root of the days are a random walk as far as the largest link
    /// lets them; z normal scores.
    /// </summary>
    /// <param name="deviationsC">Standard deviation by days ahead [°C].</param>
    /// <param name="leads">The days ahead of the days wanted, ascending.</param>
    /// <param name="futures">How many futures.</param>
    /// <param name="largestLink">How closely errors of following days go together at most.</param>
    /// <param name="draws">The draws.</param>
    /// <returns>One row a future, one value a day wanted [°C].</returns>
    internal static double[][] Draw(IReadOnlyList<double> deviationsC, IReadOnlyList<int> leads, int futures, double largestLink, ref SeededDraws draws)
    {
        double[][] errors = [.. Enumerable.Range(0, futures).Select(_ => new double[leads.Count])];
        double before = 0;
        for (int i = 0; i < leads.Count; i++)
        {
            double deviation = deviationsC[Math.Min(leads[i], deviationsC.Count - 1)];
            double link = i == 0 ? 0 : Link(before, deviation, largestLink);
            double[] scores = draws.NormalScores(futures);
            for (int future = 0; future < futures; future++)
            {
                double kept = i > 0 ? Carried(before, deviation, largestLink) * errors[future][i - 1] : 0;
                errors[future][i] = kept + deviation * Math.Sqrt(1 - link * link) * scores[future];
            }

            before = deviation;
        }

        return errors;
    }

    /// <summary>The correlation of the errors of two following days: σ(h−1)/σ(h), as of a random walk, and no more than the largest.</summary>
    internal static double Link(double beforeC, double deviationC, double largestLink) => deviationC <= 0 ? 0 : Math.Min(largestLink, beforeC / deviationC);

    /// <summary>How much of one day's error is in the next one's.</summary>
    internal static double Carried(double beforeC, double deviationC, double largestLink) => beforeC <= 0 ? 0 : Link(beforeC, deviationC, largestLink) * deviationC / beforeC;
}
