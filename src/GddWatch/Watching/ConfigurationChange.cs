using GddWatch.Agronomy.Treatments;
using GddWatch.Agronomy.Weather;
using GddWatch.Agronomy.Windows;
using GddWatch.Storage;

namespace GddWatch.Watching;

/// <summary>
/// What a change of the configuration changed about the windows of a site. It is shown in <c>status</c> and told to the operator; recipients get no
/// correction for it.
/// </summary>
internal sealed class ConfigurationChange
{
    private readonly Dictionary<(string Treatment, int Season), string> notes = [];

    private ConfigurationChange()
    {
    }

    /// <summary>What the operator is told, a sentence for each window that came out otherwise.</summary>
    public IReadOnlyList<string> OperatorWords { get; private init; } = [];

    /// <summary>Compares what was kept under another configuration with the same day judged again under this one.</summary>
    public static ConfigurationChange Between(IReadOnlyList<KeptWindow> kept, SiteJudging judging, string fingerprint, DateOnly day)
    {
        var words = new List<string>();
        var change = new ConfigurationChange { OperatorWords = words };
        foreach (Window window in judging.Standing.Windows)
        {
            KeptWindow? before = kept.FirstOrDefault(each => each.Treatment == window.Treatment.Id && each.Season == window.Season.Year);
            if (before is null) continue;
            string? note = before.ConfigurationNote;
            if (before.Configuration != fingerprint)
            {
                note = judging.Metrics is { } metrics ? Compare(before, window, metrics, day) : null;
                if (note is not null) words.Add($"{window.Treatment.Name} at {window.Site.Name}: {note}");
            }

            if (note is not null) change.notes[(window.Treatment.Id, window.Season.Year)] = note;
        }

        return change;
    }

    public string? NoteFor(Window window) => notes.GetValueOrDefault((window.Treatment.Id, window.Season.Year));

    private static string? Compare(KeptWindow before, Window window, SiteMetrics metrics, DateOnly day)
    {
        // Only the weather that was known then: days that came late are no change of the configuration.
        if (before.WeatherThrough is not { } through || metrics.Series.Until(through) is not { } seriesThen) return null;
        KnownWeather then = metrics.Weather with { Series = seriesThen, Forecast = null };
        Window again = WindowJudge.JudgeSeason(window.Treatment, SiteMetrics.Of(then, window.Site, metrics.Journal.Until(before.JudgedOn), []), window.Season, before.JudgedOn);
        if (again.State == before.State && again.FirstOpening?.Day == before.Opened) return null;
        return $"The configuration was changed before {Wording.Day(day)}. As of {Wording.Day(before.JudgedOn)} this window was {Words(before.State, before.Opened)}; by the new configuration it was {Words(again.State, again.FirstOpening?.Day)}.";
    }

    private static string Words(WindowState state, DateOnly? opened) => opened is { } day
        ? $"{WindowStates.Word(state)} (opened on {Wording.Day(day)})"
        : WindowStates.Word(state);
}
