namespace GddWatch.Agronomy.Weather.Filling;

/// <summary>Fills from a site near by, corrected for its usual difference.</summary>
public static class NeighbouringSite
{
    /// <summary>Over how many days before the missing one the two sites are compared [days].</summary>
    public const int ComparedDays = 30;

    /// <summary>How many of them both sites must know [days].</summary>
    public const int LeastCommonDays = 10;

    /// <summary>A site whose difference varies by more than this standard deviation is no neighbour [°C].</summary>
    public const double LargestDeviationC = 2.5;

    /// <summary>The neighbour that is most alike is so in part by chance; see <see cref="Of"/> for the data.</summary>
    private const double ErrorFactor = 1.2;
    /// <summary>Readings are given to 0.1 °C.</summary>
    private const double LeastErrorC = 0.1;

    /// <summary>
    /// Gives the missing temperature from the neighbour whose differences vary least, and its standard deviation.
    /// <para>value = t + mean(d), d = own − neighbour's reading on the common days among the last <see cref="ComparedDays"/> before the missing one, t the neighbour's
    /// reading of the missing day; error = 1.2·s·√(1 + 1/n), at least 0.1 °C, s the standard deviation of d, n their number.</para>
    /// <para>Valid from <see cref="LeastCommonDays"/> common days on and up to <see cref="LargestDeviationC"/>; each of the two temperatures by itself. Null where no
    /// neighbour is so, or none knows the day. Only earlier days and the day itself are used; filled and doubted values never.</para>
    /// <para>Source: the difference method for stations near each other, as climatological practice has it (MEMORY); the error is that of a new observation
    /// about a mean (textbook statistics, MEMORY).</para>
    /// <para>Fitted constant: the factor 1.2, so that the stated error agrees with the RMSE over all 28 humid stations of the US Climate Reference Network (product CRND0103, daily, 2010
    /// to 2023) that have another within 300 km: holes of 1 to 10 days by the tool filling-report of tests/GddWatch.Validation, RMSE 1.99 to 2.20 °C, bias at most 0.04. By pairs: 0.5 °C
    /// (0.6 stated) at 1 km, 0.9 (1.1) at 9 km, mostly 2.0 to 2.7 from 140 km on (3.6 to 3.9 for the one Californian pair), where linear filling of one day is off by 3.0. Only two of the pairs are as near as the sites of one region usually are.</para>
    /// </summary>
    /// <param name="series">The site's series.</param>
    /// <param name="variable">The lowest or the highest air temperature.</param>
    /// <param name="day">The missing day.</param>
    /// <param name="neighbours">The sites near by; of two that are alike the first is taken.</param>
    /// <exception cref="ArgumentOutOfRangeException">The variable is no air temperature of the day.</exception>
    public static (double ValueC, double ErrorC)? Of(DailySeries series, WeatherVariable variable, DateOnly day, IReadOnlyList<FillingNeighbour> neighbours)
    {
        ArgumentNullException.ThrowIfNull(series);
        ArgumentNullException.ThrowIfNull(neighbours);
        Reading.DemandAirTemperature(variable);
        (double ValueC, double ErrorC)? best = null;
        double leastDeviationC = LargestDeviationC;
        foreach (FillingNeighbour neighbour in neighbours)
        {
            double there = Reading.At(neighbour.Series, variable, neighbour.Series.IndexOf(day));
            if (double.IsNaN(there)) continue;
            (int common, double meanC, double deviationC) = Difference(series, neighbour.Series, variable, day);
            if (common < LeastCommonDays || deviationC > leastDeviationC || (best is not null && deviationC == leastDeviationC)) continue;
            leastDeviationC = deviationC;
            best = (there + meanC, Math.Max(LeastErrorC, ErrorFactor * deviationC * Math.Sqrt(1 + 1.0 / common)));
        }

        return best;
    }

    private static (int Common, double MeanC, double DeviationC) Difference(DailySeries own, DailySeries other, WeatherVariable variable, DateOnly day)
    {
        // Differences of temperatures are small numbers: their squares may be summed without losing digits.
        int common = 0;
        double sum = 0, squares = 0;
        int here = own.IndexOf(day), there = other.IndexOf(day);
        ReadOnlySpan<double> ownC = own.Column(variable), otherC = other.Column(variable);
        ReadOnlySpan<Mark> ownMarks = Reading.MarksOf(own, variable), otherMarks = Reading.MarksOf(other, variable);
        // Of a region's hundreds of sites each hole asks dozens: only days that both hold are looked at.
        int nearest = Math.Max(1, Math.Max(here - ownC.Length, there - otherC.Length) + 1);
        int farthest = Math.Min(ComparedDays, Math.Min(here, there));
        for (int back = nearest; back <= farthest; back++)
        {
            if (ownMarks[here - back] > Mark.Corrected || otherMarks[there - back] > Mark.Corrected) continue;
            double difference = ownC[here - back] - otherC[there - back];
            if (double.IsNaN(difference)) continue;
            common++;
            sum += difference;
            squares += difference * difference;
        }

        if (common < LeastCommonDays) return (common, double.NaN, double.NaN);
        double mean = sum / common;
        return (common, mean, Math.Sqrt(Math.Max(0, (squares - sum * mean) / (common - 1))));
    }
}
