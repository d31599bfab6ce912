using CsCheck;
using Xunit;

namespace GddWatch.Agronomy.Tests.Heat.Laws;

/// <summary>Days made up at random, always the same ones: of every kind that a lawn sees and of every case that a cutoff tells apart.</summary>
internal static class RandomDays
{
    /// <summary>Tenths as thermometers give them, so that thresholds are met exactly at times, and any number between.</summary>
    private static readonly Gen<double> Temperature = Gen.OneOf(Gen.Int[-200, 500].Select(tenths => tenths / 10.0), Gen.Double[-20.0, 50.0]);

    private static readonly Gen<RandomDay> Day =
        from one in Temperature
        from other in Temperature
        from next in Temperature
        from flat in Gen.Int[0, 19]
        from lower in Gen.OneOf(Gen.Int[0, 150].Select(tenths => tenths / 10.0), Gen.Double[0.0, 15.0])
        from band in Gen.OneOf(Gen.Int[1, 250].Select(tenths => tenths / 10.0), Gen.Double[0.1, 25.0])
        let maximum = Math.Max(one, other)
        select new RandomDay(flat == 0 ? maximum : Math.Min(one, other), maximum, next, lower, lower + band);

    /// <summary>Holds a law against so many days; a day that breaks it is named.</summary>
    public static void Each(int days, Action<RandomDay> law)
    {
        var chance = new PCG(stream: 17, seed: 20_260_412);
        for (int i = 0; i < days; i++)
        {
            RandomDay day = Day.Generate(chance, null, out _);
            try
            {
                law(day);
            }
            catch (Exception broken)
            {
                Assert.Fail($"Day {i}, {day}: {broken.Message}");
            }
        }
    }

    /// <summary>A column of so many days whose extremes fit together, with the first day's thresholds for all.</summary>
    public static (double[] MinimumC, double[] MaximumC) Column(int days, uint stream)
    {
        var chance = new PCG(stream, seed: 20_260_412);
        var minimum = new double[days];
        var maximum = new double[days];
        for (int i = 0; i < days; i++)
        {
            RandomDay day = Day.Generate(chance, null, out _);
            minimum[i] = day.MinimumC;
            maximum[i] = day.MaximumC;
        }

        return (minimum, maximum);
    }
}
