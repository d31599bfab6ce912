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
    private IReadOnlyList<WindowChances>? chances;

    /// <summary>How likely its windows open or close by which day, worked out when first asked for: a pass in which nobody asks does not pay for it. None without weather or without past years.</summary>
    public IReadOnlyList<WindowChances> Chances => chances ??= Metrics is null ? [] : Outlook.Of(Standing, Metrics);

    /// <summary>How likely a window opens or closes; null where that cannot be said.</summary>
    public WindowChances? ChancesOf(Window window) => Chances.FirstOrDefault(each => ReferenceEquals(each.Window, window));

    /// <summary>Judges a site on a day from weather in which later days are already hidden; later entries of the journal are hidden here.</summary>
    public static SiteJudging Judge(IReadOnlyList<Treatment> treatments, SiteWeather weather, SiteJournal journal, DateOnly day)
    {
        SiteJournal recorded = journal.Until(day);
        if (weather.AsOf(day) is not { } known) return new SiteJudging(WindowJudge.JudgeWithoutWeather(treatments, weather.Site, recorded, day, weather.WhyMissing), null);
        SiteMetrics metrics = MetricsOf(treatments, known, weather.Site, recorded);
        return new SiteJudging(WindowJudge.Judge(treatments, metrics, day), metrics);
    }

    /// <summary>A site's weather with its journal; what is recorded as watering refills the root zone.</summary>
    public static SiteMetrics MetricsOf(IReadOnlyList<Treatment> treatments, KnownWeather weather, Site site, SiteJournal journal)
    {
        string[] watering = [.. treatments.Where(treatment => treatment.Work == WorkKind.Watering).Select(treatment => treatment.Id)];
        return SiteMetrics.Of(weather, site, journal, [.. journal.Entries.OfType<TreatmentDone>().Where(done => watering.Contains(done.Treatment)).Select(done => done.On)]);
    }
}
