using GddWatch.Agronomy.Windows;

namespace GddWatch.Agronomy.Chances;

/// <summary>What the days ahead may bring to a site's windows as they stand; a window that nothing is told of costs nothing. For one reader at a time.</summary>
public sealed class DaysAhead
{
    private readonly Outlook? outlook;

    private DaysAhead(Outlook? outlook) => this.outlook = outlook;

    /// <summary>Nothing can be said, or nobody asked.</summary>
    public static DaysAhead Unknown { get; } = new(null);

    /// <summary>How likely the windows open or close by which day; none without past years.</summary>
    public IReadOnlyList<WindowChances> Chances => outlook?.Chances ?? [];

    /// <summary>Those of a site as it stands.</summary>
    /// <param name="standing">Where the windows stand.</param>
    /// <param name="metrics">The site's weather and journal as of the same day; null where there is no weather.</param>
    public static DaysAhead Of(Standing standing, SiteMetrics? metrics) => metrics is null ? Unknown : new DaysAhead(Outlook.Of(standing, metrics));

    /// <summary>What a reader should know of the forecast and the years behind it, a sentence each; that there is no forecast is no news.</summary>
    public IReadOnlyList<string> Remarks => outlook is null ? [] : [.. outlook.Remarks.Where(remark => remark != ForecastInUse.NoForecast)];

    /// <summary>What all of it rests on, in sentences; empty where nothing can be said.</summary>
    public string InWords() => outlook?.First is not { } first ? "" : string.Join(' ', Remarks.Prepend($"The days ahead are judged by {ChancesWords.Basis(first)}."));

    /// <summary>How likely a window opens or closes; null where that cannot be said.</summary>
    public WindowChances? Of(Window window) => outlook?.Of(window);
}
