namespace GddWatch.Agronomy.Changes;

/// <summary>The weekly overview of a region, complete: everything that a mail needs is in it, in the reader's units.</summary>
/// <param name="Sites">The sites that the reader asked for, in the order of the region.</param>
/// <param name="Reasons">Why what must wait must wait, each once for all sites.</param>
/// <param name="Cautions">What stands above all of it, a sentence each.</param>
public sealed record Bulletin(IReadOnlyList<BulletinSite> Sites, IReadOnlyList<BulletinLine> Reasons, IReadOnlyList<string> Cautions);
