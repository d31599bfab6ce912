using GddWatch.Agronomy.Treatments;
using GddWatch.Agronomy.Windows;
using GddWatch.Feeds.Faults;
using GddWatch.Feeds.Gathering;

namespace GddWatch.Watching;

/// <summary>What the operator is told about a site's weather: once, until something about it changes.</summary>
internal static class FeedTrouble
{
    /// <summary>The trouble in a sentence, the same on every day that it lasts; null where there is none.</summary>
    public static string? Of(SiteWeather weather, Standing standing)
    {
        if (weather.Series is null) return weather.WhyMissing;
        Fault? refused = weather.Faults.FirstOrDefault(fault => fault.Severity == FaultSeverity.Refused);
        if (refused is not null) return $"A feed of {weather.Site.Name} is not used: {refused}";
        if (standing.WeatherThrough is { } through && standing.Day.DayNumber - through.DayNumber > WindowJudge.StaleAfterDays)
        {
            return $"The last weather of {weather.Site.Name} is from {Wording.Day(through)}; no window opens there until newer days come in.";
        }

        Window[] unjudged = [.. standing.Windows.Where(window => window.State == WindowState.Unknown && window.Since < standing.Day)];
        return unjudged.Length == 0
            ? null
            : $"{Wording.List([.. unjudged.Select(window => window.Treatment.Name)])} at {weather.Site.Name} cannot be judged since {Wording.Day(unjudged.Max(window => window.Since))}: too many days of weather are missing before that. Fill them in, or judge there by your own observation.";
    }
}
