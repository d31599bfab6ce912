using GddWatch.Agronomy.Weather.Checks;

namespace GddWatch.Feeds.Gathering;

/// <summary>Another site of the region that has weather of its own.</summary>
/// <param name="Place">Its place among the region's sites.</param>
/// <param name="Gathered">What its feeds gave.</param>
/// <param name="Kilometres">How far away it is [km].</param>
internal readonly record struct NearSite(int Place, GatheredSite Gathered, double Kilometres)
{
    /// <summary>The weather of the sites near by, as the checks ask it.</summary>
    public static NeighbourSeries[] Series(IReadOnlyList<NearSite> near) => [.. near.Select(other => new NeighbourSeries(other.Gathered.Site.Name, other.Kilometres, other.Gathered.Series!))];
}
