using GddWatch.Agronomy.Quantities;

namespace GddWatch.Agronomy.Weather.Checks;

/// <summary>How cold and how warm a whole month can be at a place, with wide margins: for telling units apart, not for doubting weather.</summary>
public static class PossibleMonth
{
    /// <summary>What is allowed beyond the known extremes of climates, for single years and for places that the table does not know [°C].</summary>
    public const double MarginC = 4.0;

    // Known extremes of monthly mean air temperature on low ground for every tenth degree of latitude from 0 to 90. The south has no land that winter cools as it
    // cools the continents of the north. MEMORY
    private static readonly double[] ColdestMidwinterC = [22, 19, 10, 0, -14, -30, -46, -46, -45, -60];
    private static readonly double[] ColdestSouthernMidwinterC = [20, 17, 11, 6, 2, -2, -12, -35, -50, -65];
    private static readonly double[] WarmestMidwinterC = [31, 31, 29, 22, 15, 10, 7, 3, 0, -5];
    private static readonly double[] ColdestMidsummerC = [20, 20, 18, 15, 11, 7, 0, -4, -10, -35];
    private static readonly double[] WarmestMidsummerC = [31, 36, 39, 40, 37, 29, 24, 20, 10, 3];

    /// <summary>
    /// Gives the lowest and the highest mean air temperature that a month is taken to have anywhere on earth at that latitude.
    /// <para>Lowest = min over p of (W + (S − W)·w(p)) − 0.004·max(0, elevation − 500) − <see cref="MarginC"/>, with W and S the coldest midwinter and
    /// midsummer at that latitude and w(p) = (1 + cos(2π(month − p)/12))/2 for p July and August (January and February in the south), since the sea lags the land.
    /// Highest likewise with the warmest, the greater of the two, plus the margin; elevation does not raise it.</para>
    /// <para>Valid on all of the earth up to 6000 m, the ice of inner Antarctica aside.</para>
    /// <para>Source: extremes of published climate normals, such as Yakutsk and the Scilly Isles for midwinter at 62 and 50° N, Death Valley and the
    /// Californian fog coast for midsummer at 36 and 38° N, Patagonia for midwinter at 40 to 50° S, Antarctica for the south beyond 60° (MEMORY). 4 °C a km is less than the 6.5 °C a km of the standard
    /// atmosphere because the coldest low ground is under shallow cold air that heights do not have (MEMORY).</para>
    /// </summary>
    /// <param name="latitude">Latitude [°], north positive, −90 to 90.</param>
    /// <param name="elevationM">Height above the sea [m]; it only loosens the cold side.</param>
    /// <param name="month">The month, 1 to 12.</param>
    /// <exception cref="ArgumentOutOfRangeException">A parameter is out of its range or the elevation not finite.</exception>
    public static (double LowestC, double HighestC) At(double latitude, double elevationM, int month)
    {
        Demand.Within(latitude, -90, 90, "latitude [°]");
        Demand.Finite(elevationM, "elevation [m]");
        Demand.Within(month, 1, 12, "month");
        double lowestC = double.PositiveInfinity;
        double highestC = double.NegativeInfinity;
        for (int lag = 0; lag <= 1; lag++)
        {
            int peak = (latitude < 0 ? 1 : 7) + lag;
            double summer = (1 + Math.Cos(2 * Math.PI * (month - peak) / 12)) / 2;
            lowestC = Math.Min(lowestC, Between(latitude < 0 ? ColdestSouthernMidwinterC : ColdestMidwinterC, ColdestMidsummerC, latitude, summer));
            highestC = Math.Max(highestC, Between(WarmestMidwinterC, WarmestMidsummerC, latitude, summer));
        }

        return (lowestC - (0.004 * Math.Max(0, elevationM - 500)) - MarginC, highestC + MarginC);
    }

    private static double Between(double[] winterC, double[] summerC, double latitude, double summer)
    {
        double tens = Math.Abs(latitude) / 10;
        int below = Math.Min((int)tens, winterC.Length - 2);
        double part = tens - below;
        double coldC = winterC[below] + ((winterC[below + 1] - winterC[below]) * part);
        double warmC = summerC[below] + ((summerC[below + 1] - summerC[below]) * part);
        return coldC + ((warmC - coldC) * summer);
    }
}
