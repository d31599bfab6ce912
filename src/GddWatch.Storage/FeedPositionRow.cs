namespace GddWatch.Storage;

/// <summary>Where a feed said that its values are of, as it stands in the table.</summary>
internal sealed class FeedPositionRow
{
    public string Site { get; init; } = "";

    public string Feed { get; init; } = "";

    public string SeenAt { get; init; } = "";

    public double Latitude { get; init; }

    public double Longitude { get; init; }

    public double? ElevationM { get; init; }
}
