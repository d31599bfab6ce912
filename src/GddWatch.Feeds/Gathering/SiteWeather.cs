using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Weather;
using GddWatch.Feeds.Faults;

namespace GddWatch.Feeds.Gathering;

/// <summary>What all feeds of a site together know.</summary>
/// <param name="Site">The site.</param>
/// <param name="History">What came in, checked and filled as of each day; null where no feed gave any day.</param>
/// <param name="Faults">What was wrong in the feeds, in their order.</param>
/// <param name="Remarks">What the operator should look at.</param>
public sealed record SiteWeather(Site Site, WeatherHistory? History, IReadOnlyList<Fault> Faults, IReadOnlyList<FeedRemark> Remarks)
{
    /// <summary>The day after which everything is hidden; null where nothing is.</summary>
    public DateOnly? Through { get; private init; }

    /// <summary>The days as they came in; null where there is none.</summary>
    public DailySeries? Series => Through is { } last ? History?.Series.Until(last) : History?.Series;

    /// <summary>Why there is no weather, in a sentence.</summary>
    public string WhyMissing => Faults.FirstOrDefault(fault => fault.Severity == FaultSeverity.Refused) is { } refused
        ? $"There is no weather for {Site.Name}: {refused}"
        : $"There is no weather for {Site.Name} up to this day.";

    /// <summary>The same weather with the days after a day hidden.</summary>
    public SiteWeather Until(DateOnly day) => this with { Through = Through < day ? Through : day };

    /// <summary>What is known on a day; null where nothing is. Days after <see cref="Through"/> stay hidden.</summary>
    public KnownWeather? AsOf(DateOnly day) => History?.AsOf(Through < day ? Through.Value : day);
}
