namespace GddWatch.InventedWeather;

/// <summary>
/// Repeatable chance: PCG-XSH-RR 64/32. The algorithm is fixed here, so a seed and a stream give the same numbers
/// on every machine and with every later version of .NET.
/// </summary>
/// <remarks>
/// M.E. O'Neill (2014), PCG: A Family of Simple Fast Space-Efficient Statistically Good Algorithms for Random Number
/// Generation, Harvey Mudd College HMC-CS-2014-0905 (MEMORY); its reference program's output for seed 42 and stream 54
/// is held by a test (SEEN). Normal numbers: G.E.P. Box and M.E. Muller (1958), A Note on the Generation of Random
/// Normal Deviates, Annals of Mathematical Statistics 29:610-611 (MEMORY).
/// </remarks>
public sealed class SeededRandom
{
    private const ulong Multiplier = 6364136223846793005;
    private readonly ulong increment;
    private ulong state;

    /// <summary>Streams of one seed are independent of each other.</summary>
    public SeededRandom(ulong seed, ulong stream)
    {
        increment = (stream << 1) | 1;
        NextBits();
        state += seed;
        NextBits();
    }

    /// <summary>32 random bits.</summary>
    public uint NextBits()
    {
        ulong old = state;
        state = unchecked((old * Multiplier) + increment);
        uint mixed = unchecked((uint)(((old >> 18) ^ old) >> 27));
        return uint.RotateRight(mixed, (int)(old >> 59));
    }

    /// <summary>Uniform in [0, 1), with 53 random bits.</summary>
    public double NextUniform()
    {
        ulong high = NextBits() >> 5;
        ulong low = NextBits() >> 6;
        return ((high << 26) | low) * (1.0 / (1UL << 53));
    }

    /// <summary>Exponential with mean 1.</summary>
    public double NextExponential() => -Math.Log(1 - NextUniform());

    /// <summary>Two independent normal numbers with mean 0 and standard deviation 1.</summary>
    public (double First, double Second) NextNormals()
    {
        double radius = Math.Sqrt(2 * NextExponential());
        (double sine, double cosine) = Math.SinCos(2 * Math.PI * NextUniform());
        return (radius * cosine, radius * sine);
    }
}
