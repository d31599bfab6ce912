namespace GddWatch.Agronomy.Changes;

/// <summary>What makes a notice the same notice: one change of one window is told once.</summary>
/// <param name="Site">The site's id.</param>
/// <param name="Treatment">The treatment's id.</param>
/// <param name="Season">The year in which the season begins.</param>
/// <param name="Kind">What it is about.</param>
public sealed record NoticeKey(string Site, string Treatment, int Season, NoticeKind Kind)
{
    /// <summary>The key as one text, such as "north-common/overseeding/2025/opened".</summary>
    public override string ToString() => $"{Site}/{Treatment}/{Season}/{NoticeKinds.Word(Kind)}";
}
