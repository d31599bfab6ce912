namespace GddWatch.Agronomy.Windows;

/// <summary>All windows of a site as known on a day.</summary>
/// <param name="SiteId">The site's id.</param>
/// <param name="Day">The day.</param>
/// <param name="WeatherThrough">The last day whose weather is known; null where there is none.</param>
/// <param name="Windows">The window of each treatment in its current or next season.</param>
/// <param name="Ended">The windows of each treatment's season before that.</param>
public sealed record Standing(string SiteId, DateOnly Day, DateOnly? WeatherThrough, IReadOnlyList<Window> Windows, IReadOnlyList<Window> Ended)
{
    /// <summary>The same with every reason made now, so that the weather behind it can be let go.</summary>
    public Standing WithReasonsMade() => this with { Windows = [.. Windows.Select(window => window.WithReasonsMade())], Ended = [.. Ended.Select(window => window.WithReasonsMade())] };
}
