using GddWatch.Agronomy.Backtesting.Variants;
using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Treatments;

namespace GddWatch.Commands.Backtesting;

/// <summary>What a person must know to read a what-if rightly.</summary>
internal static class WhatIfWords
{
    /// <summary>What stays as it is.</summary>
    public const string AllElseStays = "Each row differs from the rule in use in what its own words name; all else of the rule stays as it is.";

    /// <summary>That the heat threshold stays while the base is another, and what that means; null where it does not.</summary>
    /// <param name="treatment">The treatment as it is.</param>
    /// <param name="variations">What was varied.</param>
    /// <param name="units">The reader's units.</param>
    public static string? OfBase(Treatment treatment, IReadOnlyList<Variation> variations, ReadersUnits units) => TreatmentVariants.HeatThatStays(treatment, variations) is { } heat
        ? $"Where the base is another, the heat threshold stays at {Wording.Heat(heat.CelsiusDays, units)}, though a threshold belongs to the base that it was made with: over a lower base heat adds up faster, so the window opens earlier for that reason alone. `gddwatch fit` looks for a base and its own threshold together."
        : null;
}
