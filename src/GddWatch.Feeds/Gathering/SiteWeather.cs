using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Weather;
using GddWatch.Feeds.Faults;

namespace GddWatch.Feeds.Gathering;

/// <summary>What all feeds of a site together know.</summary>
/// <param name="Site">The site.</param>
/// <param name="Series">The days; null where no feed gave any.</param>
/// <param name="Faults">What was wrong in the feeds, in their order.</param>
public sealed record SiteWeather(Site Site, DailySeries? Series, IReadOnlyList<Fault> Faults)
{
    /// <summary>Why there is no weather, in a sentence.</summary>
    public string WhyMissing => Faults.FirstOrDefault(fault => fault.Severity == FaultSeverity.Refused) is { } refused
        ? $"There is no weather for {Site.Name}: {refused}"
        : $"There is no weather for {Site.Name} up to this day.";

    /// <summary>The same weather with the days after a day hidden.</summary>
    public SiteWeather Until(DateOnly day) => this with { Series = Series?.Until(day) };
}
