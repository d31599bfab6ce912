using GddWatch.Agronomy.Windows;

namespace GddWatch.Storage;

/// <summary>A row of <c>kept_window</c>.</summary>
internal sealed class KeptWindowRow
{
    public string Site { get; init; } = "";

    public string Treatment { get; init; } = "";

    public int Season { get; init; }

    public string State { get; init; } = "";

    public string Since { get; init; } = "";

    public string Reason { get; init; } = "";

    public string? Opened { get; init; }

    public string? PastBest { get; init; }

    public string? ClosedOn { get; init; }

    public string JudgedOn { get; init; } = "";

    public string? WeatherThrough { get; init; }

    public string Configuration { get; init; } = "";

    public string? ConfigurationNote { get; init; }

    public static KeptWindowRow Of(KeptWindow window) => new()
    {
        Site = window.Site,
        Treatment = window.Treatment,
        Season = window.Season,
        State = WindowStates.Word(window.State),
        Since = StoredText.Of(window.Since),
        Reason = window.Reason,
        Opened = StoredText.Of(window.Opened),
        PastBest = StoredText.Of(window.PastBest),
        ClosedOn = StoredText.Of(window.ClosedOn),
        JudgedOn = StoredText.Of(window.JudgedOn),
        WeatherThrough = StoredText.Of(window.WeatherThrough),
        Configuration = window.Configuration,
        ConfigurationNote = window.ConfigurationNote,
    };

    public KeptWindow Window() => new()
    {
        Site = Site,
        Treatment = Treatment,
        Season = Season,
        State = StoredText.State(State),
        Since = StoredText.Day(Since),
        Reason = Reason,
        Opened = StoredText.DayOrNone(Opened),
        PastBest = StoredText.DayOrNone(PastBest),
        ClosedOn = StoredText.DayOrNone(ClosedOn),
        JudgedOn = StoredText.Day(JudgedOn),
        WeatherThrough = StoredText.DayOrNone(WeatherThrough),
        Configuration = Configuration,
        ConfigurationNote = ConfigurationNote,
    };
}
