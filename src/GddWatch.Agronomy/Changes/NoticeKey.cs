namespace GddWatch.Agronomy.Changes;

/// <summary>What makes a notice the same notice: one change of one window is told once, and once more for each time that it turns out otherwise.</summary>
/// <param name="Site">The site's id.</param>
/// <param name="Treatment">The treatment's id.</param>
/// <param name="Season">The year in which the season begins.</param>
/// <param name="Kind">What it is about.</param>
/// <param name="Revision">How often what was told of this window had been corrected; 0 for what is told first.</param>
public sealed record NoticeKey(string Site, string Treatment, int Season, NoticeKind Kind, int Revision = 0)
{
    /// <summary>The window that it is about, whatever is told of it and to whom, such as "north-common.overseeding.2025".</summary>
    public string WindowId() => $"{Site}.{Treatment}.{Season}";

    /// <summary>The key as one text, such as "north-common/overseeding/2025/opened".</summary>
    public override string ToString() =>
        Revision == 0 ? $"{Site}/{Treatment}/{Season}/{NoticeKinds.Word(Kind)}" : $"{Site}/{Treatment}/{Season}/{NoticeKinds.Word(Kind)}/{Revision}";
}
