using System.Numerics;

namespace GddWatch.Agronomy.Heat;

/// <summary>
/// The arccosine of several numbers at once, which the framework has for one number only. The same bits on every machine: no fused operations.
/// </summary>
internal static class ArcCosine
{
    /// <summary>
    /// Gives arccos x for x from −1 to 1, to 1e-15.
    /// <para>With z = s² and s at most 1/2: arcsin s = s·P(z). Where |x| is at most 1/2: arccos |x| = π/2 − arcsin |x|; else, by the half angle,
    /// arccos |x| = 2·arcsin √((1 − |x|)/2). For a negative x: π − arccos |x|.</para>
    /// <para>P is fitted to arcsin(√z)/√z at the twelve Chebyshev nodes of 0 to 1/4 in 60-digit arithmetic; largest error 3e-16 (CALC).</para>
    /// </summary>
    /// <param name="x">From −1 to 1; anything else gives no meaningful number.</param>
    public static Vector<double> Of(Vector<double> x)
    {
        Vector<double> size = Vector.Abs(x);
        Vector<double> half = Vector.Create(0.5);
        Vector<long> far = Vector.GreaterThan(size, half);
        Vector<double> z = Vector.ConditionalSelect(far, (Vector<double>.One - size) * half, size * size);
        Vector<double> s = Vector.ConditionalSelect(far, Vector.SquareRoot(z), size);
        Vector<double> sine = s * Polynomial(z);
        Vector<double> ofSize = Vector.ConditionalSelect(far, sine + sine, Vector.Create(Math.PI / 2.0) - sine);
        return Vector.ConditionalSelect(Vector.LessThan(x, Vector<double>.Zero), Vector.Create(Math.PI) - ofSize, ofSize);
    }

    /// <summary>Even and odd powers apart, so that two chains run side by side.</summary>
    private static Vector<double> Polynomial(Vector<double> z)
    {
        Vector<double> square = z * z;
        Vector<double> even = Vector.Create(-0.011693559679531318);
        even = even * square + Vector.Create(0.009376473481056654);
        even = even * square + Vector.Create(0.017313700945909897);
        even = even * square + Vector.Create(0.030381820752221768);
        even = even * square + Vector.Create(0.07499999995624415);
        even = even * square + Vector<double>.One;
        Vector<double> odd = Vector.Create(0.03150477675162431);
        odd = odd * square + Vector.Create(0.01825637024213353);
        odd = odd * square + Vector.Create(0.01432423514994457);
        odd = odd * square + Vector.Create(0.022374928823605693);
        odd = odd * square + Vector.Create(0.04464286038603156);
        odd = odd * square + Vector.Create(0.16666666666689706);
        return odd * z + even;
    }
}
