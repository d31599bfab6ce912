using System.Collections.Frozen;
using GddWatch.Agronomy.Places;

namespace GddWatch.Agronomy.Turf;

/// <summary>The usual range of mowing heights of a grass on home lawns.</summary>
/// <param name="LowestMm">The lowest [mm].</param>
/// <param name="HighestMm">The highest [mm].</param>
public readonly record struct MowingHeight(double LowestMm, double HighestMm)
{
    private const double MmPerInch = 25.4;

    private static readonly FrozenSet<string> CoolSeasonGrasses = FrozenSet.Create("kentucky-bluegrass", "tall-fescue", "fine-fescue", "perennial-ryegrass");

    private static readonly FrozenDictionary<string, MowingHeight> Ranges = new Dictionary<string, MowingHeight>(StringComparer.Ordinal)
    {
        ["kentucky-bluegrass"] = Inches(2.5, 3.5),
        ["tall-fescue"] = Inches(2.5, 4),
        ["fine-fescue"] = Inches(2.5, 4),
        ["perennial-ryegrass"] = Inches(2, 3),
        ["bermudagrass"] = Inches(1, 2),
        ["zoysiagrass"] = Inches(1, 2.5),
        ["st-augustinegrass"] = Inches(2.5, 4),
        ["centipedegrass"] = Inches(1, 2),
        ["bahiagrass"] = Inches(3, 4),
        ["buffalograss"] = Inches(2, 4),
    }.ToFrozenDictionary(StringComparer.Ordinal);

    /// <summary>The grasses whose range is known.</summary>
    public static IReadOnlyCollection<string> Grasses => Ranges.Keys;

    /// <summary>
    /// Gives the usual range for a grass; null for a grass that is not in the table.
    /// <para>Valid for home lawns, not for sports turf.</para>
    /// <para>Source: ranges that extension services publish widely (common practice, MEMORY).</para>
    /// </summary>
    /// <param name="grass">The grass, such as "tall-fescue".</param>
    public static MowingHeight? Of(string grass) => Ranges.TryGetValue(grass, out MowingHeight height) ? height : null;

    /// <summary>
    /// Gives the family of a grass; null for a grass that is not in the table.
    /// <para>Valid for the grasses of the table.</para>
    /// <para>Source: common botany (MEMORY).</para>
    /// </summary>
    /// <param name="grass">The grass, such as "tall-fescue".</param>
    public static TurfType? TurfOf(string grass) => !Ranges.ContainsKey(grass) ? null : CoolSeasonGrasses.Contains(grass) ? TurfType.CoolSeason : TurfType.WarmSeason;

    /// <summary>
    /// Gives the height that is advised: three quarters up the usual range, and its top in heat, where the day's highest temperature is 30 °C or more on average.
    /// <para>Valid for any temperature; NaN counts as no heat.</para>
    /// <para>Source: upper half of the range, higher in heat (common practice); 30 °C (86 °F) is DESIGN.</para>
    /// </summary>
    /// <param name="meanMaximumC">Mean of the daily highs of the last week [°C].</param>
    public double AdvisedMm(double meanMaximumC) => meanMaximumC >= 30 ? HighestMm : LowestMm + 0.75 * (HighestMm - LowestMm);

    private static MowingHeight Inches(double lowest, double highest) => new(lowest * MmPerInch, highest * MmPerInch);
}
