using GddWatch.Agronomy.Chances;
using GddWatch.Agronomy.Journal;
using GddWatch.Agronomy.Places;
using GddWatch.Agronomy.Treatments;
using GddWatch.Agronomy.Weather;
using GddWatch.Agronomy.Windows;
using GddWatch.Feeds.Gathering;

namespace GddWatch.Watching;

/// <summary>A site's windows as judged from its weather and journal on a day.</summary>
/// <param name="Standing">Where the windows stand.</param>
/// <param name="Metrics">The weather behind it; null where there is none.</param>
internal sealed record SiteJudging(Standing Standing, SiteMetrics? Metrics)
{
    /// <summary>What the days ahead may bring to its windows.</summary>
    public DaysAhead Ahead { get; } = DaysAhead.Of(Standing, Metrics);

    /// <summary>Judges a site on a day from weather in which later days are already hidden; later entries of the journal are hidden here.</summary>
    /// <param name="treatments">The treatments.</param>
    /// <param name="weather">The weather.</param>
    /// <param name="journal">What was recorded.</param>
    /// <param name="day">The day.</param>
    /// <param name="memory">What was worked out of the site's past when it was judged before; null where it is judged once.</param>
    public static SiteJudging Judge(IReadOnlyList<Treatment> treatments, SiteWeather weather, SiteJournal journal, DateOnly day, SiteMemory? memory = null)
    {
        SiteJournal recorded = journal.Until(day);
        if (weather.AsOf(day) is not { } known) return new SiteJudging(WindowJudge.JudgeWithoutWeather(treatments, weather.Site, recorded, day, weather.WhyMissing), null);
        SiteMetrics metrics = MetricsOf(treatments, known, weather.Site, recorded, memory);
        return new SiteJudging(WindowJudge.Judge(treatments, metrics, day), metrics);
    }

    /// <summary>A site's weather with its journal; what is recorded as watering refills the root zone.</summary>
    public static SiteMetrics MetricsOf(IReadOnlyList<Treatment> treatments, KnownWeather weather, Site site, SiteJournal journal, SiteMemory? memory = null)
    {
        string[] watering = [.. treatments.Where(treatment => treatment.Work == WorkKind.Watering).Select(treatment => treatment.Id)];
        return SiteMetrics.Of(weather, site, journal, [.. journal.Entries.OfType<TreatmentDone>().Where(done => watering.Contains(done.Treatment)).Select(done => done.On)], memory);
    }
}
