namespace GddWatch.Agronomy.Places;

/// <summary>What kind of work a treatment is, as far as local law looks at it.</summary>
public enum WorkKind
{
    /// <summary>Spreading fertiliser.</summary>
    Feeding,

    /// <summary>Watering.</summary>
    Watering,

    /// <summary>Products against weeds, before or after they come up.</summary>
    WeedControl,

    /// <summary>Products against insects.</summary>
    InsectControl,

    /// <summary>Sowing grass.</summary>
    Seeding,

    /// <summary>Mowing.</summary>
    Mowing,

    /// <summary>Work on the soil: levelling, topdressing, aerating, dethatching.</summary>
    SoilWork,
}
