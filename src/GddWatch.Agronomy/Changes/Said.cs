using GddWatch.Agronomy.Windows;

namespace GddWatch.Agronomy.Changes;

/// <summary>What a person was told of a window: of each change that was told, the day on which it came by what was said then.</summary>
/// <param name="On">The day of the last telling.</param>
/// <param name="Opened">The opening as told; null where it was not told.</param>
/// <param name="PastBest">The passing of its best as told.</param>
/// <param name="Closed">The close as told.</param>
internal sealed record Said(DateOnly On, SaidDay? Opened, SaidDay? PastBest, SaidDay? Closed)
{
    /// <summary>Whether any of it is otherwise by what is known now.</summary>
    public bool Differs(Window window) =>
        Differs(Opened, window.FirstOpening) || Differs(PastBest, window.PastBest) || Differs(Closed, window.LastClosing);

    /// <summary>Whether one change as told is otherwise by what is known now.</summary>
    public static bool Differs(SaidDay? said, Transition? now) => said is not null && said.Day != now?.Day;
}

/// <summary>The day of a change as it was told.</summary>
/// <param name="Day">The day; null where it was said that it had not come.</param>
internal sealed record SaidDay(DateOnly? Day);
