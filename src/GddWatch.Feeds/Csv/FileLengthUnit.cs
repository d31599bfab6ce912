namespace GddWatch.Feeds.Csv;

/// <summary>The unit of depths of water and snow in a file.</summary>
public enum FileLengthUnit
{
    /// <summary>mm.</summary>
    Millimetre,

    /// <summary>cm.</summary>
    Centimetre,

    /// <summary>inch.</summary>
    Inch,
}
