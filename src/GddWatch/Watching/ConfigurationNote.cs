using GddWatch.Agronomy.Windows;

namespace GddWatch.Watching;

/// <summary>What the last change of the configuration changed about a window: shown in <c>status</c>, never sent as a correction.</summary>
/// <param name="Site">The site's id.</param>
/// <param name="Treatment">The treatment's id.</param>
/// <param name="Season">The season.</param>
/// <param name="Words">What it changed, in a sentence.</param>
internal sealed record ConfigurationNote(string Site, string Treatment, int Season, string Words)
{
    public bool IsAbout(Window window) => window.Site.Id == Site && window.Treatment.Id == Treatment && window.Season.Year == Season;
}
