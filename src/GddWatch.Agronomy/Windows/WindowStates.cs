namespace GddWatch.Agronomy.Windows;

/// <summary>The words for the states of a window in configuration, output and mails.</summary>
public static class WindowStates
{
    /// <summary>The word for a state.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The state has no word.</exception>
    public static string Word(WindowState state) => state switch
    {
        WindowState.Waiting => "waiting",
        WindowState.Nearing => "nearing",
        WindowState.Open => "open",
        WindowState.Closing => "closing",
        WindowState.Closed => "closed",
        WindowState.Held => "held",
        WindowState.Done => "done",
        WindowState.Unknown => "unknown",
        _ => throw new ArgumentOutOfRangeException(nameof(state), state, "This state has no word."),
    };
}
