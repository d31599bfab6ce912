namespace GddWatch.InventedWeather;

/// <summary>
/// Correlations of the passing weather's departures from the seasonal means, of one day's maximum and minimum and of
/// one day with the next. Matalas's form of a bivariate first-order autoregression reproduces them:
/// x(t) = A x(t-1) + B e(t), with A = M1 M0⁻¹ and B Bᵀ = M0 - M1 M0⁻¹ M1ᵀ, where M0 holds the same-day and
/// M1 the day-to-day correlations (row: today, column: yesterday; maximum first).
/// </summary>
/// <remarks>N.C. Matalas (1967), Mathematical assessment of synthetic hydrology, Water Resources Research 3:937-945 (MEMORY).</remarks>
public sealed record DayToDay(double SameDay, double MaxToMax, double MinToMin, double MinToNextMax, double MaxToNextMin)
{
    /// <summary>The coefficients, A row by row, and B lower triangular.</summary>
    /// <exception cref="InvalidOperationException">No process has these correlations.</exception>
    public Coefficients Solve()
    {
        double scale = 1 / (1 - (SameDay * SameDay));
        double a11 = scale * (MaxToMax - (MinToNextMax * SameDay));
        double a12 = scale * (MinToNextMax - (MaxToMax * SameDay));
        double a21 = scale * (MaxToNextMin - (MinToMin * SameDay));
        double a22 = scale * (MinToMin - (MaxToNextMin * SameDay));
        double left11 = 1 - ((a11 * MaxToMax) + (a12 * MinToNextMax));
        double left21 = SameDay - ((a21 * MaxToMax) + (a22 * MinToNextMax));
        double left22 = 1 - ((a21 * MaxToNextMin) + (a22 * MinToMin));
        double b11 = Math.Sqrt(left11);
        double b21 = left21 / b11;
        double b22 = Math.Sqrt(left22 - (b21 * b21));
        return double.IsFinite(b22)
            ? new Coefficients(a11, a12, a21, a22, b11, b21, b22)
            : throw new InvalidOperationException($"No autoregressive process has these correlations: {this}.");
    }

    /// <summary>A and B of the equation above.</summary>
    public sealed record Coefficients(
        double A11, double A12, double A21, double A22, double B11, double B21, double B22);
}
