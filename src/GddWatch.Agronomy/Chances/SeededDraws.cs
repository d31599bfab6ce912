using MathNet.Numerics.Distributions;

namespace GddWatch.Agronomy.Chances;

/// <summary>
/// Draws that a seed decides, so that the same day gives the same chances live and in replay.
/// <para>Source: SplitMix64, Steele, Lea &amp; Flood 2014, Fast splittable pseudorandom number generators, OOPSLA 2014 (MEMORY); its first outputs are checked in a test.</para>
/// </summary>
/// <param name="seed">The seed.</param>
internal struct SeededDraws(ulong seed)
{
    private const ulong Golden = 0x9E3779B97F4A7C15;

    private ulong state = seed;

    /// <summary>A seed from a text and a day: the 64-bit FNV-1a hash of both (Fowler, Noll &amp; Vo; MEMORY).</summary>
    public static ulong SeedOf(string text, DateOnly day)
    {
        ulong hash = 0xCBF29CE484222325;
        foreach (char letter in text) hash = (hash ^ letter) * 0x100000001B3;
        return (hash ^ (ulong)day.DayNumber) * 0x100000001B3;
    }

    /// <summary>The next 64 bits.</summary>
    public ulong Next()
    {
        ulong mixed = state += Golden;
        mixed = (mixed ^ (mixed >> 30)) * 0xBF58476D1CE4E5B9;
        mixed = (mixed ^ (mixed >> 27)) * 0x94D049BB133111EB;
        return mixed ^ (mixed >> 31);
    }

    /// <summary>
    /// Normal scores in an order that the seed decides: Φ⁻¹((i + ½)/n), i = 0 … n − 1, scaled to variance 1. A few members so stand for the whole distribution
    /// evenly (Latin hypercube sampling, McKay, Beckman &amp; Conover 1979, Technometrics 21:239-245; MEMORY).
    /// </summary>
    /// <param name="count">How many.</param>
    public double[] NormalScores(int count)
    {
        var scores = new double[count];
        double squares = 0;
        for (int i = 0; i < count; i++)
        {
            scores[i] = Normal.InvCDF(0, 1, (i + 0.5) / count);
            squares += scores[i] * scores[i];
        }

        double scale = squares > 0 ? Math.Sqrt(count / squares) : 0;
        for (int i = 0; i < count; i++) scores[i] *= scale;
        for (int i = count - 1; i > 0; i--)
        {
            int other = (int)(Next() % (ulong)(i + 1));
            (scores[i], scores[other]) = (scores[other], scores[i]);
        }

        return scores;
    }
}
