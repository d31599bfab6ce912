using GddWatch.Agronomy.Places;

namespace GddWatch.Agronomy.Turf;

/// <summary>The water missing from the root zone on each day of a series.</summary>
public static class RootZoneColumn
{
    /// <summary>
    /// Gives the depletion at the end of each day [mm], by <see cref="RootZone.Next"/> from day to day.
    /// <para>Valid as that; NaN while the range of what may be missing is wider than <see cref="RootZone.KnownWithinMm"/>.</para>
    /// <para>Source: as <see cref="RootZone.Next"/>.</para>
    /// </summary>
    /// <param name="turf">The family of grass.</param>
    /// <param name="totalMm">The total available water [mm].</param>
    /// <param name="referenceMm">Reference evapotranspiration of each day [mm].</param>
    /// <param name="rainMm">Rain of each day [mm]; empty where none is known.</param>
    /// <param name="watered">The places of the days on which the lawn was watered deeply.</param>
    /// <param name="irrigationMm">What other waterings brought into the soil on each day [mm], NaN where one brought nobody knows how much; empty where there were none.</param>
    public static double[] Mm(
        TurfType turf,
        double totalMm,
        ReadOnlySpan<double> referenceMm,
        ReadOnlySpan<double> rainMm,
        IReadOnlySet<int> watered,
        ReadOnlySpan<double> irrigationMm = default)
    {
        var column = new double[referenceMm.Length];
        GoOn(RootZone.Unknown(totalMm), turf, totalMm, referenceMm, rainMm, watered, column, irrigationMm);
        return column;
    }

    /// <summary>Goes on from where the root zone stood on the day before, and gives how it stands at the end of the last day.</summary>
    /// <param name="zone">How it stood.</param>
    /// <param name="turf">The family of grass.</param>
    /// <param name="totalMm">The total available water [mm].</param>
    /// <param name="referenceMm">Reference evapotranspiration of each day [mm].</param>
    /// <param name="rainMm">Rain of each day [mm]; empty where none is known.</param>
    /// <param name="watered">The places of the days on which the lawn was watered deeply.</param>
    /// <param name="depletionMm">Takes the depletion at the end of each day [mm], as <see cref="Mm"/> gives it; empty where nobody asks.</param>
    /// <param name="irrigationMm">As <see cref="Mm"/> takes it.</param>
    internal static RootZone GoOn(
        RootZone zone,
        TurfType turf,
        double totalMm,
        ReadOnlySpan<double> referenceMm,
        ReadOnlySpan<double> rainMm,
        IReadOnlySet<int> watered,
        Span<double> depletionMm,
        ReadOnlySpan<double> irrigationMm = default)
    {
        ArgumentNullException.ThrowIfNull(watered);
        for (int i = 0; i < referenceMm.Length; i++)
        {
            zone = zone.Next(turf, totalMm, referenceMm[i], rainMm.IsEmpty ? double.NaN : rainMm[i], watered.Contains(i), irrigationMm.IsEmpty ? 0 : irrigationMm[i]);
            if (!depletionMm.IsEmpty) depletionMm[i] = zone.DepletionMm;
        }

        return zone;
    }
}
