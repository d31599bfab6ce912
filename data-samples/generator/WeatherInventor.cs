namespace GddWatch.InventedWeather;

/// <summary>
/// Invents daily weather day by day: (1) wet or dry by a first-order Markov chain, (2) on a wet day an amount from a
/// skewed distribution, (3) minimum and maximum as seasonal means for a wet or a dry day plus departures that persist
/// and go together (bivariate first-order autoregression). Added to that, one slow anomaly common to both
/// temperatures: the passing weather forgets within days, and real springs differ by weeks.
/// </summary>
/// <remarks>
/// C.W. Richardson (1981), Stochastic simulation of daily precipitation, temperature, and solar radiation,
/// Water Resources Research 17:182-190, doi:10.1029/WR017i001p00182 (title and place SEEN, the model MEMORY), without its
/// solar radiation and with one spread for wet and dry days. Amounts: mixed exponential instead of its single exponential,
/// as D.A. Woolhiser and J. Roldán (1982), Stochastic daily precipitation models 2, Water Resources Research
/// 18:1461-1468 (MEMORY). The slow anomaly and the bound are ours.
/// </remarks>
public static class WeatherInventor
{
    /// <summary>The least amount of a wet day; drier days count as dry.</summary>
    public const double LeastRainMm = 0.2;

    /// <summary>Half of the wet days are showers with this part of the mean amount, the others make up for it.</summary>
    public const double ShowerPart = 0.4;

    /// <summary>The slow anomaly's share of the departures' variance, from the correlation left after ten and twenty days.</summary>
    public const double SlowShare = 0.09;

    /// <summary>The slow anomaly's correlation from day to day: it fades to 1/e in 40 days.</summary>
    public const double SlowPersistence = 0.975;

    /// <summary>
    /// Departures end at this many standard deviations. Real tails are shorter than the normal law's, which freezes a
    /// mild coast at -20 °C.
    /// </summary>
    public const double Bound = 2.5;

    private const double LeastRangeC = 1;
    private const double ColdestC = -40;
    private const double HottestC = 44;

    /// <summary>The same climate, span and seed always give the same days; both ends are included.</summary>
    public static IEnumerable<InventedDay> Invent(InventedClimate climate, DateOnly first, DateOnly last, ulong seed)
    {
        // Streams of their own: how often rain is drawn must not shift the draws of the temperatures.
        SeededRandom rainChance = new(seed, 3 * climate.Number);
        SeededRandom weatherChance = new(seed, (3 * climate.Number) + 1);
        SeededRandom anomalyChance = new(seed, (3 * climate.Number) + 2);
        DayToDay.Coefficients step = climate.Departures.Solve();

        bool wet = rainChance.NextUniform() < climate.WetShareOn(first);
        (double max, double min) = weatherChance.NextNormals();
        min = (climate.Departures.SameDay * max) + (Math.Sqrt(1 - Math.Pow(climate.Departures.SameDay, 2)) * min);
        double slow = anomalyChance.NextNormals().First;

        for (DateOnly date = first; date <= last; date = date.AddDays(1))
        {
            wet = rainChance.NextUniform() < (wet ? climate.WetAfterWet : climate.WetAfterDry).On(date);
            double rainMm = wet ? RainOn(date, climate, rainChance) : 0;

            (double push, double otherPush) = weatherChance.NextNormals();
            (max, min) = (
                (step.A11 * max) + (step.A12 * min) + (step.B11 * push),
                (step.A21 * max) + (step.A22 * min) + (step.B21 * push) + (step.B22 * otherPush));
            slow = (SlowPersistence * slow)
                + (Math.Sqrt(1 - (SlowPersistence * SlowPersistence)) * anomalyChance.NextNormals().First);

            double maximumC = climate.MeanMaximumC(date, wet) + (climate.SpreadOfMaximumC.On(date) * Together(max, slow));
            double minimumC = climate.MeanMinimumC(date, wet) + (climate.SpreadOfMinimumC.On(date) * Together(min, slow));
            yield return Written(date, minimumC, maximumC, rainMm);
        }
    }

    // The share scales the two parts so that their sum keeps the variance of 1.
    private static double Together(double passing, double slow) =>
        Math.Clamp((Math.Sqrt(1 - SlowShare) * passing) + (Math.Sqrt(SlowShare) * slow), -Bound, Bound);

    private static double RainOn(DateOnly date, InventedClimate climate, SeededRandom chance)
    {
        double part = chance.NextUniform() < 0.5 ? ShowerPart : 2 - ShowerPart;
        return LeastRainMm + ((climate.RainOnWetDayMm.On(date) - LeastRainMm) * part * chance.NextExponential());
    }

    private static InventedDay Written(DateOnly date, double minimumC, double maximumC, double rainMm)
    {
        // The two normal departures can cross; moving both away from the middle keeps the day's mean.
        double middleC = (minimumC + maximumC) / 2;
        double halfRangeC = Math.Max(maximumC - minimumC, LeastRangeC) / 2;
        return new InventedDay(
            date,
            Tenths(Math.Clamp(middleC - halfRangeC, ColdestC, HottestC - LeastRangeC)),
            Tenths(Math.Clamp(middleC + halfRangeC, ColdestC + LeastRangeC, HottestC)),
            Tenths(rainMm));

        // Adding zero turns a rounded -0 into 0.
        static double Tenths(double value) => Math.Round(value, 1) + 0.0;
    }
}
