using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Quantities;

namespace GddWatch.Agronomy.Turf;

/// <summary>How often to mow, by the one-third rule.</summary>
public static class MowingInterval
{
    /// <summary>
    /// Gives the growth of a lawn in its best weather gmax [mm/day]: 6 for cool-season turf (a quarter of an inch; cuts every 6 or 7 days at 3 inches in the flush of spring keep the one-third rule) and 4 for warm-season turf
    /// (cuts every 4 to 7 days at 1.5 to 2 inches in midsummer do).
    /// <para>Valid for lawns with water and moderate feeding; the grass, feeding and a growth regulator change it by half or more, so who knows the lawn gives another.</para>
    /// <para>Source: usual intervals and heights (common practice), turned into growth (DESIGN).</para>
    /// </summary>
    /// <param name="turf">The family of grass.</param>
    public static double BestGrowthMmPerDay(TurfType turf) => turf == TurfType.CoolSeason ? 6 : 4;

    /// <summary>
    /// Gives the growth of a day g = gmax·GP [mm/day].
    /// <para>Valid for growth potentials of 0 to 1; NaN gives NaN. Feeding and water change it.</para>
    /// <para>Source: growth potential as a share of the best growth (science reference 3.7, DESIGN).</para>
    /// </summary>
    /// <param name="growthPotential">The growth potential [-].</param>
    /// <param name="bestMmPerDay">The growth in the best weather gmax [mm/day], such as <see cref="BestGrowthMmPerDay"/>.</param>
    public static double GrowthMmPerDay(double growthPotential, double bestMmPerDay) => bestMmPerDay * growthPotential;

    /// <summary>
    /// Gives after how many days the grass has grown by half its height of cut, so that a cut takes a third of it: (H/2)/g [days]; infinite where nothing grows.
    /// <para>Valid for heights of 5 to 200 mm and growths of 0 or more; NaN gives NaN.</para>
    /// <para>Source: one-third rule, after Crider 1955, Root-growth stoppage resulting from defoliation of grass, USDA Technical Bulletin 1102 (MEMORY; rule SEEN in extension texts).</para>
    /// </summary>
    /// <param name="heightMm">Height of cut H [mm].</param>
    /// <param name="growthMmPerDay">Growth g [mm/day].</param>
    /// <exception cref="ArgumentOutOfRangeException">The height lies outside its range.</exception>
    public static double Days(double heightMm, double growthMmPerDay) => Demand.Within(heightMm, 5, 200, "height of cut [mm]") / 2.0 / growthMmPerDay;

    /// <summary>
    /// Gives whether cutting back to a height after some days keeps the one-third rule: not more than a third of the grass is taken, g·days ≤ H/2.
    /// <para>Valid as <see cref="Days"/>.</para>
    /// <para>Source: as <see cref="Days"/>.</para>
    /// </summary>
    /// <param name="heightMm">Height of cut [mm].</param>
    /// <param name="days">Days between two cuts [days].</param>
    /// <param name="growthMmPerDay">Growth [mm/day].</param>
    public static bool KeepsTheThird(double heightMm, double days, double growthMmPerDay) => growthMmPerDay * days <= heightMm / 2.0;
}
