using GddWatch.Agronomy.Windows;

namespace GddWatch.Agronomy.Chances;

/// <summary>Whether a window that waits is likely to open soon.</summary>
public static class Nearing
{
    /// <summary>Whether the chances pass the level that the treatment sets for a heads-up.</summary>
    public static bool IsNearing(WindowChances chances)
    {
        ArgumentNullException.ThrowIfNull(chances);
        return !chances.OfClosing
            && chances.Window.State is WindowState.Waiting or WindowState.Nearing
            && chances.Window.FirstOpening is null
            && chances.Within(chances.Window.Treatment.HeadsUp.WithinDays) >= chances.Window.Treatment.HeadsUp.Chance;
    }

    /// <summary>The state of a window as people read it: nearing in place of waiting where the chances say soon.</summary>
    public static WindowState StateOf(Window window, WindowChances? chances)
    {
        ArgumentNullException.ThrowIfNull(window);
        return window.State == WindowState.Waiting && chances is not null && IsNearing(chances) ? WindowState.Nearing : window.State;
    }
}
