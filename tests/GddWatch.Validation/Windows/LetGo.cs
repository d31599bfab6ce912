using GddWatch.Agronomy.Treatments.Conditions;
using GddWatch.Agronomy.Windows;

namespace GddWatch.Validation.Windows;

/// <summary>What opened a window and then was so no more, and came back: what an open window hides, since it opens once and stays open.</summary>
/// <param name="Times">How often it let go between the opening and the close.</param>
/// <param name="CameBack">How often it came back after that.</param>
internal readonly record struct LetGo(int Times, int CameBack)
{
    /// <summary>Looks at every day from the opening to the close; days that are not known change nothing.</summary>
    public static LetGo Of(Window window, SiteMetrics metrics)
    {
        if (window.FirstOpening is not { } opening) return default;
        var view = new SeasonView(metrics, window.Season);
        DateOnly last = window.LastClosing?.Day ?? window.Season.Span.Last;
        bool holds = true;
        int times = 0;
        int back = 0;
        for (DateOnly day = opening.Day; day < last; day = day.AddDays(1))
        {
            Verdict verdict = window.Treatment.Opens.On(view, day);
            if (verdict == Verdict.Unknown || verdict == Verdict.Yes == holds) continue;
            holds = !holds;
            if (holds) back++;
            else times++;
        }

        return new LetGo(times, back);
    }
}
