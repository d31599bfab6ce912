using GddWatch.Agronomy.Treatments;
using GddWatch.Agronomy.Windows;
using GddWatch.Feeds.Faults;
using GddWatch.Feeds.Gathering;

namespace GddWatch.Watching;

/// <summary>What the operator is told about a site's weather: once, until it is another trouble.</summary>
/// <param name="Key">The same for as long as the trouble is the same, whatever its figures are by now.</param>
/// <param name="Words">The trouble in a sentence.</param>
internal sealed record FeedTrouble(string Key, string Words)
{
    /// <summary>The troubles of a site: a refused feed, what keeps windows from being judged, and what is odd about its feeds.</summary>
    public static IReadOnlyList<FeedTrouble> Of(SiteWeather weather, Standing standing)
    {
        IEnumerable<FeedTrouble> odd = weather.Remarks.Select(remark => new FeedTrouble($"{weather.Site.Id} {remark.Key.ReplaceLineEndings(" ")}", $"Weather of {weather.Site.Name}: {remark.Words}"));
        if (weather.Series is null) return [new FeedTrouble($"{weather.Site.Id} none", weather.WhyMissing), .. odd];
        IEnumerable<FeedTrouble> refused = weather.Faults.Where(fault => fault.Severity == FaultSeverity.Refused).Take(1)
            .Select(fault => new FeedTrouble($"{weather.Site.Id} refused {fault.File}", $"A feed of {weather.Site.Name} is not used: {fault}"));
        return NotJudged(weather, standing) is { } notJudged ? [.. refused, notJudged, .. odd] : [.. refused, .. odd];
    }

    private static FeedTrouble? NotJudged(SiteWeather weather, Standing standing)
    {
        string site = weather.Site.Id;

        if (standing.WeatherThrough is { } through && standing.Day.DayNumber - through.DayNumber > WindowJudge.StaleAfterDays)
        {
            return new FeedTrouble(
                $"{site} stale {through:yyyy-MM-dd}",
                $"The last weather of {weather.Site.Name} is from {Wording.Day(through)}; no window opens there until newer days come in.");
        }

        // What stands in the bulletin alone may lack more than weather, such as the texture of the soil; its own reason says so there.
        Window[] unjudged = [.. standing.Windows.Where(window => window.State == WindowState.Unknown && window.Since < standing.Day && !window.Treatment.BulletinOnly)];
        if (unjudged.Length == 0) return null;
        string names = Wording.List([.. unjudged.Select(window => window.Treatment.Name)]);
        return new FeedTrouble(
            $"{site} unjudged {string.Join(' ', unjudged.Select(window => $"{window.Treatment.Id}/{window.Season.Year}"))}",
            $"{names} at {weather.Site.Name} cannot be judged since {Wording.Day(unjudged.Max(window => window.Since))}: too many days of weather are missing before that. Fill them in, or judge there by your own observation.");
    }
}
