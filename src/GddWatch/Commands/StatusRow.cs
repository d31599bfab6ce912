using GddWatch.Agronomy.Quantities;
using GddWatch.Agronomy.Windows;
using GddWatch.Commands.Output;
using GddWatch.Watching;

namespace GddWatch.Commands;

/// <summary>One window in the answer of <c>status</c>.</summary>
internal sealed class StatusRow(Window window, DateOnly day, IReadOnlyList<ConfigurationNote> notes)
{
    public static readonly IReadOnlyList<string> Columns = ["site", "treatment", "season", "state", "since", "reason", "chances"];

    public string SiteName => window.Site.Name;

    private string? Note => notes.FirstOrDefault(note => note.IsAbout(window))?.Words;

    public object ForPrograms() => new
    {
        Site = window.Site.Id,
        Treatment = window.Treatment.Id,
        Season = window.Season.Year,
        State = WindowStates.Word(window.State),
        Since = Dates.Iso(window.Since),
        Reason = window.Because.Sentence(ReadersUnits.Metric),
        Chances = (object?)null,
        ConfigurationChange = Note,
    };

    public IReadOnlyList<string?> Cells() =>
    [
        window.Site.Id, window.Treatment.Id, window.Season.Year.ToString(), WindowStates.Word(window.State), Dates.Iso(window.Since),
        window.Because.Sentence(ReadersUnits.Metric), null,
    ];

    public IEnumerable<string> PeopleCells(ReadersUnits units)
    {
        string why = window.Because.Sentence(units);
        if (!window.Treatment.IsToldAt(window.Site)) why += $" No mail is sent about it: {window.Treatment.OnlyWithHistory} are not in this site's history.";
        if (Note is { } note) why += $" {note}";
        bool isToCome = window.State == WindowState.Waiting && window.Since > day;
        return [window.Treatment.Name, WindowStates.Word(window.State), $"{(isToCome ? "from " : "")}{Dates.ShortWithYear(window.Since)}", why];
    }
}
