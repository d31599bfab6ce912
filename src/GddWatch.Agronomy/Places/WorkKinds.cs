namespace GddWatch.Agronomy.Places;

/// <summary>The words for kinds of work in configuration, output and mails.</summary>
public static class WorkKinds
{
    /// <summary>The word for a kind.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The kind has no word.</exception>
    public static string Word(WorkKind kind) => kind switch
    {
        WorkKind.Feeding => "feeding",
        WorkKind.Watering => "watering",
        WorkKind.WeedControl => "weed-control",
        WorkKind.InsectControl => "insect-control",
        WorkKind.Seeding => "seeding",
        WorkKind.Mowing => "mowing",
        WorkKind.SoilWork => "soil-work",
        _ => throw new ArgumentOutOfRangeException(nameof(kind), kind, "This kind of work has no word."),
    };
}
