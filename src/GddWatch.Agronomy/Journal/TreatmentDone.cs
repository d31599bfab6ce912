namespace GddWatch.Agronomy.Journal;

/// <summary>A treatment that was carried out.</summary>
public sealed record TreatmentDone : JournalEntry
{
    /// <summary>The treatment's id.</summary>
    public required string Treatment { get; init; }

    /// <summary>The active ingredient, as the person wrote it; may be empty.</summary>
    public string Active { get; init; } = "";

    /// <summary>The first day on which the product's label allows grass seed again; null where the person did not say.</summary>
    public DateOnly? NoSeedUntil { get; init; }
}
